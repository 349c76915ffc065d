// A bush, or a tree too far off for its branches: leaves in the shells of a few lobes, denser outside, on a handful of stems.
// For hedges and thickets at 40–400 m, where a crown is a hundred pixels high and light and gaps make it real.
import { addLeaf, addLimb, type Foliage } from './foliage.ts'
import { createStream, hash } from './hash.ts'
import type { Vector } from './vector.ts'

export interface BushOptions {
  readonly seed: number
  readonly foot: Vector
  readonly heightM: number
  readonly widthM: number
  /** Height of the lowest leaves as a share of the height: 0.02 for bushes, 0.25 for trees. */
  readonly clear: number
  readonly leaves: number
  /** Length of a leaf, or of the spray of leaves that one stroke stands for. */
  readonly leafM: number
  readonly kind?: number
}

/** Adds the bush to `foliage`. */
export function growBush(foliage: Foliage, options: BushOptions): void {
  const { foot, heightM, widthM, seed } = options
  const [x, y, z] = foot
  const shape = createStream(hash(seed, 1))
  const lobes = 9 + Math.floor(7 * shape())
  const half = widthM / 2
  const low = options.clear * heightM
  const tint = 2 * shape() - 1
  for (let l = 0; l < lobes; l++) {
    const next = createStream(hash(seed, 2, l))
    const up = Math.sqrt((l + 0.4) / lobes)
    const belly = Math.sqrt(Math.max(0.06, 1 - ((up - 0.45) / 0.62) ** 2))
    const turn = l * 2.39996 + next()
    const out = half * belly * (0.25 + 0.5 * next())
    const size = half * (0.3 + 0.24 * next()) * (1.1 - 0.35 * up)
    const cx = x + Math.cos(turn) * out
    const cz = z + Math.sin(turn) * out
    const cy = y + low + up * (heightM - low) - size * 0.75
    const stem = 0.006 * heightM
    addLimb(foliage, x + (cx - x) * 0.1, y, z + (cz - z) * 0.1, stem * 1.4, cx, cy, cz, stem * 0.5)
    const count = Math.round(options.leaves / lobes)
    for (let i = 0; i < count; i++) {
      const h = 2 * next() - 1
      const a = next() * 6.2832
      const r = size * (0.55 + 0.6 * next() ** 1.5)
      const flat = Math.sqrt(1 - h * h)
      const nx = Math.cos(a) * flat
      const nz = Math.sin(a) * flat
      const px = cx + nx * r
      const py = Math.max(y + low * 0.6 + 0.02, cy + h * r * 0.85)
      const b = next() * 6.2832
      const m = options.leafM * (0.6 + 0.7 * next())
      addLeaf(
        foliage,
        px,
        py,
        cz + nz * r,
        Math.cos(b) * m,
        (next() - 0.65) * m,
        Math.sin(b) * m,
        nx + 0.9 * (next() - 0.5),
        h + 0.5,
        nz + 0.9 * (next() - 0.5),
        m * 0.36,
        0.6 * tint + 0.4 * (2 * next() - 1),
        options.kind ?? 0,
      )
    }
  }
}
