// What bark looks like, as numbers over the developed surface of a trunk: `around` and `up` in metres, `fp` = width of a
// pixel in metres. `lightness` multiplies the colour, `relief` −1…1 is the slope of the surface around the trunk,
// `second` 0…1 is the share of the second material (lichen, black scars).
import { type Cells, cells2, fbm2, noise2 } from './noise.ts'

export interface BarkSpot {
  lightness: number
  relief: number
  second: number
}

export type Bark = (around: number, up: number, fp: number, seed: number, out: BarkSpot) => void

const cells: Cells = { f1: 0, f2: 0, id: 0 }

function ridges(around: number, up: number, seed: number, fp: number): number {
  const bend = 0.03 * noise2(around / 0.12, up / 0.3, seed + 5) + 0.012 * noise2(around / 0.03, up / 0.09, seed + 6)
  const u = (around + bend) / 0.05
  const v = up / 0.36
  const n = fbm2(u, v, 3, seed, (fp / 0.05) * 1.2)
  return 1 - Math.min(1, Math.abs(n) * 2.1)
}

/** Deep furrows between long plates, as on old oaks. */
export const furrowedBark: Bark = (around, up, fp, seed, out) => {
  const e = Math.max(0.004, fp)
  const here = ridges(around, up, seed, fp)
  const beside = ridges(around + e, up, seed, fp)
  const fine = fbm2(around / 0.012, up / 0.03, 4, seed + 11, fp / 0.012)
  const broad = fbm2(around / 0.3, up / 0.8, 3, seed + 15, fp / 0.3)
  const seen = Math.max(0, Math.min(1, 1.15 - fp / 0.016))
  const furrow = 0.32 + (here * here * here - 0.32) * seen
  out.relief = Math.max(-1, Math.min(1, (beside - here) * (0.006 / e) * 1.6 * seen + 0.25 * fine))
  out.lightness = (1.12 - 0.78 * furrow) * (1 + 0.3 * fine) * (1 + 0.25 * broad)
  out.second = 0.6 * Math.max(0, Math.min(1, (broad + 0.6 * fine - 0.42) * 4)) * (1 - furrow)
}

/** Smooth grey skin with faint rings, blotches and lichen, as on beeches. */
export const smoothBark: Bark = (around, up, fp, seed, out) => {
  const broad = fbm2(around / 0.22, up / 0.35, 4, seed, fp / 0.22)
  const rings = fbm2(around / 0.5, up / 0.035, 3, seed + 7, fp / 0.035)
  const fine = fbm2(around / 0.018, up / 0.014, 4, seed + 9, fp / 0.014)
  out.relief = 0.16 * fine + 0.1 * rings
  out.lightness = (1 + 0.28 * broad) * (1 + 0.1 * rings) * (1 + 0.15 * fine)
  out.second = 0.5 * Math.max(0, Math.min(1, (broad + 0.5 * fine - 0.42) * 2.5))
}

/** White skin with dark cross marks and rough black scars, as on birches; `second` is the black. */
export const birchSkin: Bark = (around, up, fp, seed, out) => {
  const fine = fbm2(around / 0.02, up / 0.008, 3, seed + 2, fp / 0.008)
  const dash = noise2(around / 0.035, up / 0.011, seed + 3) + 0.5 * noise2(around / 0.16, up / 0.2, seed + 4)
  cells2(around / 0.22, up / 0.45, seed + 5, cells)
  const rough = fbm2(around / 0.05, up / 0.05, 4, seed + 6, fp / 0.05)
  const scar = Math.max(0, Math.min(1, (0.19 - cells.f1 + 0.12 * rough) * 9)) * ((cells.id & 7) > 3 ? 1 : 0)
  const foot = Math.max(0, Math.min(1, (0.7 - up + 0.9 * rough) * 1.6))
  const lines = Math.max(0, Math.min(1, (dash - 0.62) * 5)) * (fp > 0.012 ? 0.4 : 0.85)
  out.second = Math.max(scar, foot * 0.9, lines)
  out.relief = 0.1 * fine + 0.4 * rough * Math.max(scar, foot)
  out.lightness = (1 + 0.12 * fine) * (1 + 0.16 * rough * (1 - out.second)) * (1 - 0.35 * out.second * (0.5 + rough))
}
