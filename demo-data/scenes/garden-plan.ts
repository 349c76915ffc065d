// The garden's plan: where the path, the borders and the lawn lie, and what the ground looks like there. Ground, blades and
// plants ask the same plan, so that edges agree. Metres: X right, Z away.
import type { Palette } from '../light/triplets.ts'
import { type Brush, lightMix, scale } from '../paint/brush.ts'
import type { Sward } from '../paint/grass.ts'
import { hashUnit } from '../paint/hash.ts'
import { type Cells, cells2, fbm2, noise2 } from '../paint/noise.ts'
import { soilAt, type SoilSpot } from '../paint/soil.ts'

export interface GardenPlan {
  colour(x: number, z: number, across: number, along: number, brush: Brush): void
  sward(x: number, z: number, out: Sward): void
  bladeColour(x: number, z: number, chance: number, brush: Brush): void
}

/** Distance of the fence in m. */
export const fenceZ = 15
/** Front left foot and width of the bench at the end of the path. */
export const bench = { x: -0.25, z: 14, widthM: 1.6 }
const pathHalfM = 0.62
const slabM = 0.62

const smooth = (a: number, b: number, v: number) => {
  const t = Math.min(1, Math.max(0, (v - a) / (b - a)))
  return t * t * (3 - 2 * t)
}

/** Middle of the path at distance z. */
export const pathX = (z: number) => -1.5 + 1.9 * Math.sin((z - 3) * 0.17) - 0.012 * z

/** How far inside a border a place lies, m; negative on the lawn. */
export function insideBorder(x: number, z: number): number {
  const back = z - (fenceZ - 1.75 + 0.3 * Math.sin(x * 0.8))
  const right = x - (2.25 + 0.45 * Math.sin(z * 0.62 + 0.6) + 0.12 * (z - 4))
  const left = -3.9 - 0.13 * (z - 4) - 0.35 * Math.sin(z * 0.7) - x
  const seat = 1.25 - Math.abs(x - bench.x - bench.widthM / 2) + 0.08 * Math.sin(z * 5)
  return Math.max(Math.min(back, -seat), right, left)
}

/** `sunAt` is the share of direct sun at ground level. */
export function createGardenPlan(
  palette: Palette,
  seed: number,
  sunUp: number,
  sunAt: (x: number, z: number) => number,
): GardenPlan {
  const grass = palette.of('grass')
  const dry = palette.of('dryGrass')
  const soil = palette.of('soil')
  const stone = palette.of('limestone')
  const slab = palette.of('concrete')
  const lichen = palette.of('lichen')
  const spot: SoilSpot = { lightness: 1, stone: 0 }
  const cell: Cells = { f1: 0, f2: 0, id: 0 }

  const fromPath = (x: number, z: number) =>
    Math.abs(x - pathX(z)) -
    (pathHalfM + 0.5 * smooth(12.6, 13.6, z)) -
    0.07 * noise2(z * 2.1, x > pathX(z) ? 5 : 9, seed)
  const joint = (x: number, z: number) => {
    cells2((x - pathX(z)) / slabM + 0.5, z / slabM, seed + 3, cell)
    return (cell.f2 - cell.f1) * slabM * 0.55 + 0.012 * fbm2(x / 0.09, z / 0.09, 3, seed + 5)
  }
  const dryness = (x: number, z: number) => 0.22 + 0.3 * fbm2(x / 1.7, z / 1.7, 3, seed + 11)
  const mown = (x: number) => (Math.sin(x * 5.6 + 0.5 * noise2(x, 2, seed)) > 0 ? 1.06 : 0.94)

  return {
    sward(x, z, out) {
      const tuft = fbm2(x / 0.16, z / 0.16, 3, seed + 2)
      const edge = Math.min(fromPath(x, z), -insideBorder(x, z))
      const inPath = fromPath(x, z) < 0 && insideBorder(x, z) < 0
      out.groundM = 0
      out.lean = 0.25 * noise2(x / 0.5, z / 0.7, seed + 6) + (mown(x) > 1 ? 0.12 : -0.12)
      if (inPath) {
        const gap = smooth(0.045, 0.015, joint(x, z))
        out.heightM = 0.024 * gap * smooth(-0.2, 0.3, fbm2(x / 0.5, z / 0.5, 2, seed + 8))
        out.density = gap * 0.5
        return
      }
      const verge = smooth(0.09, 0.02, edge)
      out.heightM = edge > 0 ? 0.034 + 0.012 * tuft + 0.05 * verge : 0
      out.density = smooth(-1.3, -0.5, tuft)
    },
    bladeColour(x, z, chance, brush) {
      const sun = sunAt(x, z) * (0.5 + 0.5 * sunUp)
      const share = Math.min(0.9, Math.max(0, dryness(x, z) + 0.5 * (chance - 0.6)))
      lightMix(brush, grass, dry, share, sun * (0.7 + 0.5 * chance), 0.9, 0, 0.36 * (0.3 + 0.7 * sun))
      scale(brush, 1.15 * mown(x) * Math.max(0.5, 0.95 + 0.3 * fbm2(x / 0.3, z / 0.3, 3, seed + 2)))
    },
    colour(x, z, across, along, brush) {
      const fp = Math.max(across, along * 0.6)
      const direct = sunAt(x, z) * sunUp
      const border = insideBorder(x, z)
      const path = fromPath(x, z)
      if (border > -0.02) {
        soilAt(x, z, fp, seed + 41, -0.8, spot)
        lightMix(brush, soil, stone, 0.35 * spot.stone, direct, 0.6, 0, 0.05 * direct)
        scale(brush, spot.lightness * (0.45 + 0.4 * smooth(0.02, 0.2, border)))
      } else if (path < 0) {
        const seam = joint(x, z)
        const tone = hashUnit(cell.id, 1)
        const worn = fbm2(x / 0.34, z / 0.34, 5, seed + 13, fp / 0.34)
        const grain = fbm2(x / 0.02, z / 0.02, 3, seed + 15, fp / 0.02)
        const patch = smooth(0.25, 0.6, fbm2(x / 0.11, z / 0.11, 4, seed + 17, fp / 0.11) + 0.3 * worn)
        const open = smooth(0.012 - fp, 0.022 + fp, seam)
        lightMix(
          brush,
          slab,
          patch > 0.3 ? lichen : stone,
          patch > 0.3 ? 0.6 * patch : 0.5 * tone,
          direct,
          0.85,
          0,
          0.03,
        )
        scale(
          brush,
          (0.72 + 0.22 * tone + 0.16 * worn + 0.1 * grain) * (0.28 + 0.72 * open) * (1 - 0.25 * smooth(-0.06, 0, path)),
        )
      } else {
        lightMix(brush, grass, dry, Math.max(0, dryness(x, z)), 0.6 * direct, 0.5, 0, 0.15 * (0.2 + 0.8 * direct))
        scale(brush, 0.55 + 0.12 * fbm2(x / 0.2, z / 0.2, 3, seed + 31, fp / 0.2))
      }
    },
  }
}
