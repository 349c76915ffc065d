// The meadow's floor: where the path runs, how high and how dry the grass is, where clouds take the sun. One description serves
// ground texture, blades, herbs and far trees, so that they agree.
import type { Palette } from '../light/triplets.ts'
import { type Air, throughAir } from '../paint/air.ts'
import { type Brush, lightMix, scale } from '../paint/brush.ts'
import type { GroundShadow } from '../paint/crown-shadow.ts'
import type { Sward } from '../paint/grass.ts'
import { fbm2, noise2 } from '../paint/noise.ts'
import { soilAt, type SoilSpot } from '../paint/soil.ts'

export interface MeadowGround {
  colour(x: number, z: number, across: number, along: number, brush: Brush): void
  sward(x: number, z: number, out: Sward): void
  bladeColour(x: number, z: number, chance: number, brush: Brush): void
  /** Share of sun at ground level 0…1: clouds and the tree. */
  sunAt(x: number, z: number): number
  /** Distance to the middle of the path, m. */
  fromPath(x: number, z: number): number
  woodCover(x: number, z: number): number
  hedgeCover(x: number, z: number): number
}

const smooth = (a: number, b: number, v: number) => {
  const t = Math.min(1, Math.max(0, (v - a) / (b - a)))
  return t * t * (3 - 2 * t)
}

/** Middle of the path at distance z: in from the lower left, past the tree's near side. */
const pathX = (z: number) => -1.9 + 0.21 * z - 0.0011 * z * z + 1.15 * Math.sin(z * 0.115 + 0.4)

export function createMeadowGround(palette: Palette, seed: number, shadow: GroundShadow, air: Air): MeadowGround {
  const grass = palette.of('grass')
  const dry = palette.of('dryGrass')
  const soil = palette.of('sandWet')
  const stone = palette.of('limestone')
  const spot: SoilSpot = { lightness: 1, stone: 0 }

  const fromPath = (x: number, z: number) => Math.abs(x - pathX(z) - 0.12 * noise2(z * 0.9, 3, seed))
  const cloudSun = (x: number, z: number) => {
    const edge = 9 * noise2(x / 26, z / 26, seed + 7)
    const band = smooth(44, 58, z + edge + 0.2 * x) * (1 - smooth(92, 120, z + edge * 2))
    const corner = smooth(-0.5, 1.3, 0.75 * x - 0.62 * z + 1.6 + 0.05 * edge)
    const far = z > 140 ? smooth(0.1, 0.4, noise2(x / 260, z / 150, seed + 8)) : 0
    return 1 - 0.9 * Math.max(band, 0.95 * corner, far)
  }
  const sunAt = (x: number, z: number) => cloudSun(x, z) * shadow.sunAt(x, z)
  const dryness = (x: number, z: number) => {
    const n = fbm2(x / 7.5, z / 7.5, 3, seed + 11)
    return Math.min(0.95, Math.max(0.03, 0.4 + 0.75 * n))
  }

  return {
    sunAt,
    fromPath,
    woodCover: (x, z) => smooth(-0.35, 0.15, fbm2(x / 120, z / 300, 3, seed + 21)),
    hedgeCover: (x, z) => 0.25 + 0.75 * smooth(-0.45, -0.1, noise2(x / 22, z / 90, seed + 23)),
    sward(x, z, out) {
      const tuft = fbm2(x / 0.9, z / 0.9, 3, seed + 2)
      const field = fbm2(x / 6, z / 6, 3, seed + 4)
      const path = fromPath(x, z)
      const trodden = smooth(0.1, 0.5, path)
      const verge = smooth(0.4, 1.6, path)
      const wanted = 0.36 + 0.26 * field + 0.2 * tuft
      out.heightM = Math.max(0.05, wanted) * (0.1 + 0.9 * trodden) * (0.72 + 0.28 * verge)
      out.density = (0.08 + 0.92 * trodden) * smooth(-1.05, -0.25, tuft + 0.35 * field)
      out.groundM = 0.05 * field + 0.03 * tuft
      out.lean = 0.28 * fbm2(x / 3.5 + 5, z / 5, 2, seed + 6) + 0.1
    },
    bladeColour(x, z, chance, brush) {
      const d = dryness(x, z)
      const share = Math.min(1, Math.max(0, d + 0.75 * (chance - 0.5)))
      const sun = sunAt(x, z)
      lightMix(brush, grass, dry, share, 0.95 * sun * (0.65 + 0.55 * chance), 0.8, 0, 0.32 * (0.12 + 0.88 * sun))
      const tuft = fbm2(x / 0.9, z / 0.9, 3, seed + 2)
      scale(brush, Math.max(0.35, 0.86 + 0.5 * tuft))
      throughAir(brush, air, z)
    },
    colour(x, z, across, along, brush) {
      const fp = Math.max(across, along * 0.6)
      const away = fromPath(x, z)
      const sun = sunAt(x, z)
      const standing = 1 - smooth(70, 105, z)
      if (away < 0.8 && z < 90) {
        const grown = smooth(
          0.3,
          0.5,
          away + (away < 0.6 ? 0.13 * fbm2(x / 0.09, z / 0.14, 3, seed + 43, fp / 0.09) : 0),
        )
        soilAt(x, z, fp, seed + 41, -0.9, spot)
        lightMix(brush, soil, stone, 0.8 * spot.stone, 0.66 * sun, 0.75, 0, 0.1 * sun)
        scale(brush, spot.lightness * (1 - 0.62 * grown))
      } else {
        const hidden = z < 28
        const coarse = fbm2(x / 2.6, z / 4, hidden ? 2 : 6, seed + 31, fp / 2.6)
        const fine = hidden ? 0 : fbm2(x / 0.12, z / 0.4, 4, seed + 37, fp / 0.12)
        lightMix(brush, grass, dry, dryness(x, z), 0.7 * sun, 0.75, 0, 0.26 * (0.12 + 0.88 * sun))
        const open = 1 - 0.72 * standing
        scale(brush, open * (0.84 + 0.22 * coarse + 0.14 * fine))
      }
      throughAir(brush, air, z)
    },
  }
}
