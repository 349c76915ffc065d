// Trees near enough on the far shore to be drawn leaf spray by leaf spray: the rows at the water and the slope behind them.
import type { Palette } from '../light/triplets.ts'
import { type Air, throughAir } from '../paint/air.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import { farWoodKind, type FarWood, growFarWood } from '../paint/far-wood.ts'
import { type Dye, placeFoliage } from '../paint/place-foliage.ts'
import { createStrokes, sortStrokes, type Strokes } from '../paint/strokes.ts'
import type { Vector } from '../paint/vector.ts'
import { inlandM, type LakeLand, shoreM, sprayedToM } from './lake-land.ts'

/** Zones of trees: nearer ones need more and smaller sprays; beyond `sprayedToM` only the edge of the wood at the water. */
const zones = [
  { nearM: shoreM, farM: 640, rows: 24, sprays: 640, edgeM: Infinity },
  { nearM: 640, farM: sprayedToM + 20, rows: 18, sprays: 340, edgeM: Infinity },
  { nearM: sprayedToM + 20, farM: 1560, rows: 60, sprays: 160, edgeM: 34 },
]

/** Grows the trees, one plant list per zone; place them once per camera. */
export function growLakeTrees(land: LakeLand, seed: number, reach: number, sun: Vector): FarWood[] {
  return zones.map(({ edgeM, ...zone }, i) =>
    growFarWood({
      ...zone,
      seed: seed + i,
      halfSlope: reach,
      heightM: [9, 19],
      spacingM: 9,
      conifers: 0.3,
      sun,
      groundM: (x, z) => Math.max(0, land.ground(x, z, 1)) - 0.3,
      cover: (x, z) => {
        const inland = inlandM(x, z)
        return inland < 1 || inland > edgeM ? 0 : land.wood(x, z)
      },
    }),
  )
}

/** The trees as strokes for one camera. */
export function placeLakeTrees(
  woods: readonly FarWood[],
  camera: Camera,
  palette: Palette,
  sun: Vector,
  air: Air,
): Strokes {
  const strokes = createStrokes()
  const leaf = palette.of('leaf')
  const maple = palette.of('mapleLeaf')
  const pine = palette.of('pine')
  const bark = palette.of('bark')
  const dye: Dye = {
    leaf(part, brush) {
      if (part.kind === farWoodKind.conifer)
        light(brush, pine, 0.9 * part.sun, 0.7 * part.sky, 0, 0.02 + 0.1 * part.sky)
      else lightMix(brush, leaf, maple, 0.4, 1.2 * part.sun, 0.8 * part.sky, 0, 0.04 + 0.3 * part.sky)
      scale(brush, 1 + 0.14 * part.tint)
      throughAir(brush, air, part.z)
    },
    limb(part, brush) {
      light(brush, bark, part.sun, part.sky)
      throughAir(brush, air, part.z)
    },
  }
  for (const wood of woods) placeFoliage(strokes, wood.foliage, wood.lit, camera, sun, dye)
  sortStrokes(strokes)
  return strokes
}
