// Corrugated metal roofing: ribs along the slope, overlapping rows of sheets, rust that starts at nails and edges and runs
// down. Input metres along the eaves and up the slope, output factors for the scene's light.
import { hashUnit } from './hash.ts'
import { fbm2, noise2 } from './noise.ts'

export interface RoofSpot {
  lightness: number
  /** Share of rust 0…1. */
  rust: number
}

const ribM = 0.076
const sheetLongM = 2.1
const sheetWideM = 0.9

/** The roof at `s` along the eaves, `t` up the slope; `along` and `up` are metres per pixel. */
export function sheetAt(s: number, t: number, along: number, up: number, seed: number, out: RoofSpot): void {
  const column = Math.floor(s / sheetWideM)
  const row = Math.floor(t / sheetLongM + 0.13 * hashUnit(column, seed, 1))
  const own = hashUnit(column, row, seed, 2)
  const rise = t - row * sheetLongM
  const ribs = Math.max(0, 1 - along / (ribM * 0.6)) * Math.sin((s / ribM) * 2 * Math.PI)
  const lap = Math.max(0, 1 - Math.min(1, Math.abs(rise) / Math.max(0.03, up)))
  const broad = fbm2(s / 0.8, t / 1.6, 4, seed + 3, along / 0.8)
  const runs = fbm2(s / 0.06, t / 1.2, 4, seed + 5, along / 0.06)
  const fine = fbm2(s / 0.02, t / 0.02, 3, seed + 9, Math.max(along, up) / 0.02)
  const age = 1.7 * own - 0.75 + 0.9 * broad + 0.55 * runs + 0.5 * Math.exp(-Math.max(0, rise) / 0.25)
  out.rust = Math.min(1, Math.max(0, age * 1.2))
  out.lightness =
    (0.86 + 0.2 * own) * (1 + 0.2 * ribs) * (1 - 0.4 * lap) * (1 + 0.1 * fine) * (1 + 0.08 * noise2(s * 3, t, seed))
}
