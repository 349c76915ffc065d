// Bare trodden earth at walking distance: clods and pebbles of two sizes, ruts of fine relief lit from one side, straw.
// Noise alone looks like camouflage cloth; the two sizes of separate stones make it ground.
import { type Cells, cells2, fbm2 } from './noise.ts'

export interface SoilSpot {
  /** Brightness, about 1. */
  lightness: number
  /** Share of stone, 0…1. */
  stone: number
}

const cell: Cells = { f1: 0, f2: 0, id: 0 }

/** Height of the fine relief in arbitrary units, for lighting by differences. */
function relief(x: number, z: number, seed: number, fp: number): number {
  return fbm2(x / 0.2, z / 0.2, 5, seed, fp / 0.2)
}

function stones(x: number, z: number, sizeM: number, share: number, seed: number, fp: number, out: SoilSpot): void {
  if (fp > sizeM * 0.7) return
  cells2(x / sizeM, z / sizeM, seed, cell)
  if ((cell.id >>> 4) % 1000 > share * 1000) return
  const radius = 0.2 + (0.2 * ((cell.id >>> 14) & 255)) / 255
  const d = cell.f1 / radius
  const edge = Math.min(1, Math.max(0, ((1 - d) * radius * sizeM) / Math.max(fp, sizeM * 0.05) + 0.5))
  if (edge > 0) {
    const tone = 0.75 + (0.5 * ((cell.id >>> 22) & 255)) / 255
    out.lightness += edge * (tone * (1.12 - 0.4 * d * d) - out.lightness)
    out.stone = Math.max(out.stone, edge)
  } else if (d < 1.5) out.lightness *= 1 - 0.3 * (1.5 - d)
}

/** What the soil is like at X, Z metres; `fp` = metres that a pixel spans, `sunSide` −1…1 where the light comes from. */
export function soilAt(x: number, z: number, fp: number, seed: number, sunSide: number, out: SoilSpot): void {
  const e = Math.max(0.006, fp)
  const slope = (relief(x + e, z, seed, fp) - relief(x, z, seed, fp)) / e
  const grain = fbm2(x / 0.013, z / 0.013, 3, seed + 9, fp / 0.013)
  const damp = fbm2(x / 0.7, z / 1.1, 3, seed + 13, fp / 0.7)
  const lit = Math.max(-0.55, Math.min(0.6, -slope * sunSide * 0.02))
  out.lightness = (0.92 + lit + 0.16 * grain) * (1 + 0.22 * damp)
  out.stone = 0
  stones(x, z, 0.035, 0.3, seed + 17, fp, out)
  stones(x, z, 0.11, 0.16, seed + 19, fp, out)
}
