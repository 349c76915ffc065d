// Foam on water: a sheet that opens into holes, then into a net, then into scraps as it ages. Holes come in three sizes, the
// smallest being bubbles; each size fades when a pixel no longer resolves it, and keeps the share of white it had.
import { type Cells, cells2, noise2 } from './noise.ts'

export interface Foam {
  /** Share of the surface that is white, 0…1. */
  cover: number
  /** Brightness of the white part, about 1: thick rims and bubbly creases. */
  tone: number
}

const sizes = [
  { cellM: 1.15, hole: 0.62 },
  { cellM: 0.36, hole: 0.85 },
  { cellM: 0.1, hole: 1 },
] as const
const cells: Cells = { f1: 0, f2: 0, id: 0 }

function smooth(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

/**
 * Foam of thickness `age` (1.2 = just broken, .5 = a net, 0 = gone) at u metres across and v along the crests.
 * `footprintM` = width of a pixel on the water.
 */
export function foamAt(u: number, v: number, age: number, footprintM: number, seed: number, out: Foam): void {
  out.cover = 0
  out.tone = 1
  if (age < 0.03) return
  const bend = 0.32 * noise2(u / 0.8, v / 1.1, seed) + 0.11 * noise2(u / 0.21, v / 0.27, seed + 1)
  const drift = 0.32 * noise2(u / 0.9 + 5, v / 0.8, seed + 2) + 0.11 * noise2(u / 0.23, v / 0.21, seed + 3)
  const torn = noise2(u / 2.1, v / 3.3, seed + 4) + 0.6 * noise2(u / 0.6, v / 0.9, seed + 5)
  const frayed =
    footprintM < 0.03 ? 0.5 * noise2(u / 0.045, v / 0.05, seed + 6) + 0.3 * noise2(u / 0.014, v / 0.016, seed + 9) : 0
  let field = 0.42 * (2.3 * age - 0.75 + 0.8 * torn) + 0.1 * frayed
  let thinned = 1
  let tone = 1
  for (let i = 0; i < sizes.length; i++) {
    const { cellM, hole } = sizes[i]
    const seen = 1 - smooth(0.2, 0.8, footprintM / cellM)
    const closed = hole * age * (1 + 0.25 * torn)
    thinned *= seen + (1 - seen) * Math.min(1, 0.25 + closed)
    if (seen <= 0) continue
    cells2((u + bend) / cellM, (v + drift) / (cellM * 1.25), seed + 17 + i, cells)
    field = Math.min(field, (closed - (cells.f2 - cells.f1) + 0.05 * frayed) * seen + (1 - seen))
    tone += seen * (i === 0 ? 0.05 : 0.12) * (0.45 - cells.f1)
  }
  if (footprintM < 0.014) {
    cells2(u / 0.024, v / 0.03, seed + 27, cells)
    tone += 0.3 * (1 - footprintM / 0.014) * (cells.f2 - cells.f1 - 0.28)
  }
  const edge = 0.035 + 0.9 * footprintM
  out.cover = smooth(-edge, edge, field) * thinned
  out.tone = tone + 0.1 * smooth(0, 0.5, field) - 0.05
}
