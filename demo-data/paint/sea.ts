// The sea along a shore: swell that rears up into crests, breaks, and trails foam. Distances seaward of the water's edge in metres.
// Height and foam come from the same crests, so white water lies where the wave has broken.
import { type Cells, cells2, fbm2, noise2 } from './noise.ts'

/** Crests by their mean distance from the edge, with height in metres. */
const crests = [
  { at: 4.2, heightM: 0.16 },
  { at: 10.5, heightM: 0.5 },
  { at: 19, heightM: 0.8 },
  { at: 31, heightM: 0.95 },
  { at: 46, heightM: 0.8 },
  { at: 66, heightM: 0.6 },
] as const
const outerM = 84

function smooth(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

function shift(i: number, along: number): number {
  return 2.6 * noise2(along / 21, i * 5.3, 331) + 0.8 * noise2(along / 5.5, i * 3.1, 332)
}

function strength(i: number, along: number): number {
  return smooth(-0.55, 0.4, noise2(along / 17 + i * 9.7, i * 2.2, 333) + 0.2)
}

/** Height of the water `seawardM` off the edge at `along` metres along the shore; detail under `footprintM` is left out. */
export function seaHeight(seawardM: number, along: number, footprintM: number): number {
  let h = 0.1 * Math.min(1, Math.max(0, seawardM / 12)) * fbm2(seawardM / 3.1, along / 6.3, 3, 334, footprintM / 3)
  if (seawardM > 45) h += 0.35 * smooth(45, 100, seawardM) * fbm2(seawardM / 17, along / 46, 2, 335, footprintM / 17)
  if (seawardM > outerM) return h
  for (let i = 0; i < crests.length; i++) {
    const { at, heightM } = crests[i]
    const near = seawardM - at
    if (near < -6 || near > 10) continue
    const q = near - shift(i, along)
    if (q < -1.6 || q > 6) continue
    const ragged = 1 + 0.4 * fbm2(along / 1.7, seawardM / 1.3, 4, 336 + i, footprintM / 1.5)
    h += heightM * strength(i, along) * ragged * (q > 0 ? Math.exp(-q / 1.9) : Math.exp(-q * q * 3))
  }
  return h
}

const cell: Cells = { f1: 0, f2: 0, id: 0 }

/** Share 0…1 of the surface that is foam. */
export function foamShare(seawardM: number, along: number, footprintM: number): number {
  const broad = fbm2(seawardM / 2.4, along / 3.6, 3, 341, footprintM / 2.4)
  const fine = fbm2(seawardM / 0.45, along / 0.6, 5, 342, footprintM / 0.45)
  let fresh = 0
  let old = 0
  for (let i = 0; i < crests.length; i++) {
    const near = seawardM - crests[i].at
    if (near < -8 || near > 16) continue
    const q = near - shift(i, along)
    const s = strength(i, along)
    if (q > -2.6 && q < 4) fresh = Math.max(fresh, s * smooth(-1.7, -0.5, q) * Math.exp(-Math.max(0, q) / 0.8))
    if (q > -0.5 && q < 13) old = Math.max(old, (0.3 + 0.7 * s) * Math.exp(-Math.max(0, q) / 4.2))
  }
  const edge = smooth(0.75, 0.1, Math.abs(seawardM - 0.35 - 0.4 * broad)) * (0.75 + 0.3 * broad)
  const solid = smooth(0.3, 0.62, Math.max(fresh, edge * 0.8) + 0.3 * fine + 0.16 * broad)
  if (old < 0.06 || seawardM > outerM) return solid
  cells2(seawardM / 0.62 + 0.5 * fine, along / 0.85 + 0.6 * broad, 343, cell)
  const wide = 0.05 + 0.3 * old
  const lace =
    smooth(wide, wide * 0.35, cell.f2 - cell.f1) * smooth(-0.5, 0.5, broad * 1.2 + 1.5 * old - 0.55 + 0.3 * fine)
  return Math.min(1, solid + 0.75 * lace * smooth(0.06, 0.3, old))
}
