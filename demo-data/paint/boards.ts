// Weathered upright boards: every board has its width, tone and length; grain, cracks, knots, nails with rust below them,
// gaps to the dark behind. Input metres along and up the wall, output factors for the scene's light.
import { hash, hashUnit } from './hash.ts'
import { type Cells, cells2, fbm2, noise2 } from './noise.ts'

export interface BoardSpot {
  /** Brightness, about 1. */
  lightness: number
  /** Share of fresh, browner wood 0…1. */
  fresh: number
  /** Share of gap through which the dark behind shows, 0…1. */
  gap: number
}

const cell: Cells = { f1: 0, f2: 0, id: 0 }
const boardM = 0.19
const nailRowsM = 1.32

/** Cover of a line of half-width `half` at distance `d`, a pixel being `fp` wide; thin lines fade and keep their area. */
function line(d: number, half: number, fp: number): number {
  return Math.min(1, Math.max(0, (half - d) / fp + 0.5)) * Math.min(1, (2 * half) / fp)
}

/** The boards at `s` along and `t` up; `along` and `up` as in `paintPlane`. */
export function boardAt(s: number, t: number, along: number, up: number, seed: number, out: BoardSpot): void {
  const place = s / boardM + 0.32 * noise2(s / 0.5, 0.5, seed)
  const index = Math.floor(place)
  const id = hash(index, seed)
  const from = (place - index) * boardM
  const edge = Math.min(from, boardM - from)
  const gapHalf = 0.0025 + 0.006 * hashUnit(id, 1) ** 3
  const warp = 0.004 * noise2(t / 0.8, index, seed + 1)
  const x = s + 0.004 * noise2(t / 0.35, s / 0.05, seed + 2)
  const grain = fbm2(x / 0.011 + index * 7.3, t / 0.5, 4, seed + 3, along / 0.011)
  const stain = fbm2(s / 0.25, t / 1.1, 3, seed + 7, along / 0.25)
  const crack = line(Math.abs(noise2(x / 0.028 + index * 3.1, t / 1.3, seed + 9)) * 0.02, 0.0009, along)
  out.lightness = (0.72 + 0.5 * hashUnit(id, 2)) * (1 + 0.3 * grain) * (1 + 0.2 * stain) * (1 - 0.7 * crack)
  out.fresh = Math.max(0, 0.12 + 0.5 * (hashUnit(id, 3) - 0.6) + 0.2 * stain)
  cells2(s / 0.19 + 0.5 * hashUnit(id, 4), t / 0.85, seed + 11, cell)
  if (along < 0.02 && (cell.id & 3) === 0 && cell.f1 < 0.16) {
    const ring = 0.75 + 0.25 * Math.cos(cell.f1 * 90)
    const knot = Math.min(1, (0.16 - cell.f1) * 14)
    out.lightness *= 1 - 0.5 * knot * ring
  }
  const row = (((t - 0.45) % nailRowsM) + nailRowsM) % nailRowsM
  if (along < 0.02) {
    const nailX = Math.min(Math.abs(from - boardM * 0.28), Math.abs(from - boardM * 0.72))
    const head = line(Math.hypot(nailX, row), 0.0045, Math.max(along, up))
    const below = nailRowsM - row
    const run = 0.06 + 0.3 * hashUnit(id, Math.floor(t / nailRowsM), 7) ** 2
    const streak = below < run ? line(nailX, 0.004, along) * (1 - below / run) : 0
    out.lightness *= (1 - 0.65 * head) * (1 - 0.22 * streak)
  }
  out.gap = line(edge + warp, gapHalf, along)
  const missing = hashUnit(id, 5)
  if (missing < 0.025 && t < 0.5 + 26 * missing) out.gap = 1
  const foot = 0.06 + 0.13 * hashUnit(id, 6) ** 2 + 0.02 * noise2(s / 0.03, 2, seed)
  if (t < foot + up) out.gap = Math.max(out.gap, Math.min(1, Math.max(0, (foot - t) / up + 0.5)))
}
