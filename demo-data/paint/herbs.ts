// Tall herbs that rise out of a meadow: umbels, grasses in seed, broad leaves near the ground. They are foliage in space, so
// they sort with everything else; `kind` tells a scene what it colours.
import { addLeaf, addLimb, type Foliage } from './foliage.ts'
import { createStream } from './hash.ts'

/** Kinds of leaf in herbs. */
export const herbKind = { leaf: 0, flower: 1, seed: 2 } as const

/** An umbel: a stem, rays and a flat plate of small flowers, `heightM` high. */
export function growUmbel(foliage: Foliage, x: number, y: number, z: number, heightM: number, seed: number): void {
  const next = createStream(seed)
  const lean = (next() - 0.5) * 0.25 * heightM
  const branches = 1 + Math.floor(3 * next())
  for (let b = 0; b < branches; b++) {
    const from = b === 0 ? 0 : 0.35 + 0.3 * next()
    const top = heightM * (b === 0 ? 1 : 0.72 + 0.22 * next())
    const sideX = b === 0 ? lean : lean + (next() - 0.5) * 0.35 * heightM
    const sideZ = b === 0 ? 0 : (next() - 0.5) * 0.2 * heightM
    const tx = x + sideX
    const tz = z + sideZ
    addLimb(foliage, x + lean * from, y + heightM * from, z, 0.0032 * (1 - from * 0.4), tx, y + top, tz, 0.0016)
    const plate = 0.03 + 0.035 * next()
    const rays = 12 + Math.floor(7 * next())
    for (let r = 0; r < rays; r++) {
      const a = (r / rays) * 6.283 + next()
      const out = plate * Math.sqrt((r + 0.5) / rays) * (0.85 + 0.3 * next())
      const rx = tx + Math.cos(a) * out
      const rz = tz + Math.sin(a) * out
      const ry = y + top + plate * (0.95 - 0.5 * (out / plate) ** 2) + 0.004 * next()
      addLimb(foliage, tx, y + top, tz, 0.0009, rx, ry, rz, 0.0006)
      const florets = 10 + Math.floor(7 * next())
      for (let f = 0; f < florets; f++) {
        const fa = next() * 6.283
        const fr = 0.0115 * Math.sqrt(next())
        const size = 0.0034 + 0.0022 * next()
        const fx = rx + Math.cos(fa) * fr
        const fz = rz + Math.sin(fa) * fr
        const turn = next() * 6.283
        const ax = Math.cos(turn) * size
        const az = Math.sin(turn) * size
        addLeaf(
          foliage,
          fx,
          ry + 0.003 * next(),
          fz,
          ax,
          0.0012,
          az,
          0,
          1,
          -0.5,
          size * 0.45,
          next() - 0.5,
          herbKind.flower,
        )
      }
    }
  }
  for (let l = 0; l < 4; l++)
    growFrond(foliage, x + lean * 0.2, y + heightM * (0.08 + 0.4 * next()), z, heightM * 0.3, next)
}

/** A feathered leaf that arches away from a stem. */
function growFrond(foliage: Foliage, x: number, y: number, z: number, lengthM: number, next: () => number): void {
  const a = next() * 6.283
  const rise = 0.5 + 0.4 * next()
  const pairs = 7
  let fromX = x
  let fromY = y
  let fromZ = z
  for (let k = 1; k <= pairs; k++) {
    const t = k / pairs
    const px = x + Math.cos(a) * lengthM * t
    const py = y + lengthM * (rise * t - 0.75 * t * t)
    const pz = z + Math.sin(a) * lengthM * t
    addLimb(foliage, fromX, fromY, fromZ, 0.0011, px, py, pz, 0.0009)
    const size = lengthM * 0.3 * (1.1 - t) * (0.8 + 0.4 * next())
    for (const side of [-1, 1]) {
      const b = a + side * (0.8 + 0.3 * next())
      const droop = size * (0.5 * next() - 0.35)
      addLeaf(
        foliage,
        px,
        py,
        pz,
        Math.cos(b) * size,
        droop,
        Math.sin(b) * size,
        0.2,
        1,
        -0.4,
        size * 0.16,
        next() - 0.5,
      )
    }
    fromX = px
    fromY = py
    fromZ = pz
  }
}

/** A grass in seed: a thin bowed stem with a loose panicle. */
export function growSeedHead(
  foliage: Foliage,
  x: number,
  y: number,
  z: number,
  heightM: number,
  lean: number,
  seed: number,
): void {
  const next = createStream(seed)
  const bow = (lean + 0.35 * (next() - 0.5)) * heightM
  const at = (t: number) => [x + bow * t * t, y + heightM * (t - 0.12 * t * t * Math.abs(bow / heightM))] as const
  const segments = 5
  for (let s = 0; s < segments; s++) {
    const [ax, ay] = at(s / segments)
    const [bx, by] = at((s + 1) / segments)
    addLimb(foliage, ax, ay, z, 0.0011, bx, by, z, 0.0008)
  }
  const spikelets = 12 + Math.floor(10 * next())
  const length = 0.16 + 0.12 * next()
  for (let s = 0; s < spikelets; s++) {
    const t = 1 - length * (1 - s / spikelets)
    const [px, py] = at(t)
    const side = s % 2 ? 1 : -1
    const size = (0.009 + 0.006 * next()) * (1.25 - 0.6 * (s / spikelets))
    const out = 0.5 + 0.5 * next()
    const ax = side * size * out + bow * 0.02
    const far = z + size * (next() - 0.5)
    addLeaf(
      foliage,
      px + side * 0.002,
      py,
      far,
      ax,
      size * (0.5 + 0.9 * next()),
      0,
      0.2,
      0.3,
      -1,
      size * 0.15,
      next() - 0.5,
      herbKind.seed,
    )
    if (next() < 0.6)
      addLeaf(
        foliage,
        px,
        py + size * 0.4,
        z,
        -ax * 0.7,
        size,
        0,
        0.2,
        0.3,
        -1,
        size * 0.14,
        next() - 0.5,
        herbKind.seed,
      )
  }
}

/** A rosette of broad leaves close to the ground, `radiusM` wide. */
export function growRosette(foliage: Foliage, x: number, y: number, z: number, radiusM: number, seed: number): void {
  const next = createStream(seed)
  const leaves = 9 + Math.floor(6 * next())
  for (let l = 0; l < leaves; l++) {
    const a = (l / leaves) * 6.283 + next() * 0.6
    const size = radiusM * (0.7 + 0.5 * next())
    const rise = size * (0.1 + 0.45 * next())
    const ax = Math.cos(a) * size
    const az = Math.sin(a) * size
    addLeaf(foliage, x, y + 0.02, z, ax, rise, az, -Math.cos(a) * 0.6, 1, -Math.sin(a) * 0.6, size * 0.15, next() - 0.5)
  }
}
