// The top of a wood as height over ground points: every crown a dome or a spire on a jittered grid, seen from far away.
// Crowns are part of the landscape, so they hide, overlap and shade each other without being drawn one by one.
import { type Cells, cells2, noise2 } from './noise.ts'

export interface Crown {
  /** Height of the surface above the ground, m; 0 between trees. */
  heightM: number
  /** 0 in the gap between crowns, 1 at a top. */
  rise: number
  conifer: boolean
  /** The tree's own number 0…1. */
  chance: number
}

const cellM = 8.5
const clusterM = 2.3
const cells: Cells = { f1: 0, f2: 0, id: 0 }

/**
 * The wood's surface at X, Z. `cover` and `conifers` 0…1: share of places with a tree, and of spires among them.
 * `footprintM` fades what is smaller than a pixel.
 */
export function crownAt(
  x: number,
  z: number,
  cover: number,
  conifers: number,
  seed: number,
  footprintM: number,
  out: Crown,
): void {
  out.heightM = 0
  out.rise = 0
  if (cover <= 0) return
  const bend = footprintM < 2.5 ? 0.3 * noise2(x / 5, z / 5, seed) : 0
  cells2(x / cellM + bend, z / cellM - bend, seed + 1, cells)
  const { id, f1, f2 } = cells
  out.chance = (id & 1023) / 1023
  out.conifer = ((id >>> 10) & 255) / 255 < conifers
  if (((id >>> 18) & 127) / 128 >= cover) return
  const grown = 0.6 + 0.4 * ((id >>> 25) / 127)
  const between = Math.min(1, (f2 - f1) * 2.2)
  if (out.conifer) {
    const q = Math.max(0, 1 - f1 / 0.6)
    out.rise = q * between
    out.heightM = (2 + 16 * q * Math.min(1, between * 1.6)) * grown
    return
  }
  const q = f1 / 0.78
  out.rise = (q < 1 ? Math.sqrt(1 - q * q) : 0) * between ** 0.6
  let lumps = 0
  if (footprintM < 0.9) {
    cells2(x / clusterM + 7 * out.chance, z / clusterM, seed + 2, cells)
    const fade = Math.min(1, (0.9 - footprintM) * 2)
    lumps = fade * (1.5 * Math.sqrt(Math.max(0, 1 - cells.f1 * cells.f1 * 1.25)) - 0.9)
  }
  out.heightM = (3.5 + 10 * out.rise + lumps * (0.35 + 0.65 * out.rise)) * grown
}
