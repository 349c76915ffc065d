// Frame 7: a garden in high summer without a filter: lawn, a path of slabs to a board fence, borders in flower, a fruit tree.
// Visible and infrared light arrive together, so greens are pale and everything that grows leans to magenta.
import { createAir, throughAir } from '../paint/air.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import { createCamera, sunDirection } from '../paint/camera.ts'
import { castFoliage } from '../paint/crown-shadow.ts'
import { createCumulus, paintCumulus } from '../paint/cumulus.ts'
import { farWoodKind, growFarWood } from '../paint/far-wood.ts'
import { createFoliage } from '../paint/foliage.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { sowGrass } from '../paint/grass.ts'
import { paintGround } from '../paint/ground.ts'
import { noise2 } from '../paint/noise.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { createStrokes, paintStrokes, sortStrokes } from '../paint/strokes.ts'
import { growTree } from '../paint/tree.ts'
import { createGardenFence } from './garden-fence.ts'
import { createGardenPlan, fenceZ } from './garden-plan.ts'
import { borderDye, growBorders } from './garden-plants.ts'

export const garden: Scene = {
  id: 'garden',
  title: 'Garden without a filter',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.89, horizon: 0.46, eyeM: 1.62 })
    const sun = sunDirection(-118, 46)
    const sky = createClearSky(palette, -0.5)
    const skyAir = createAir(palette, 26000, 0.12, 1.2)
    const air = createAir(palette, 3500, 0.06, 0.5)
    const cumulus = createCumulus({ seed, sun, cover: -0.2, offsetKm: [4, 6], reach: 0.58, top: 0.45 })

    const tree = createFoliage()
    growTree(tree, {
      seed,
      foot: [-3.6, 0, 11.6],
      lean: 0.06,
      heightM: 5.1,
      radiusM: 2.5,
      clearM: 1.25,
      lobes: 26,
      points: 3400,
      leafM: 0.075,
      leavesPerTwig: 8,
      twigs: 3,
    })
    const plants = growBorders(seed)
    const crown = castFoliage(tree, sun)
    const low = castFoliage(plants, sun)
    const along = (x: number, y: number) => x - (sun[0] * y) / sun[1]
    const back = (z: number, y: number) => z - (sun[2] * y) / sun[1]
    const crownAt = (x: number, y: number, z: number) => crown.sunAt(along(x, y), back(z, y))
    const sunAt = (x: number, z: number) => crown.sunAt(x, z) * low.sunAt(x, z)
    const plan = createGardenPlan(palette, seed, sun[1], sunAt)

    const leaf = palette.of('leaf')
    const maple = palette.of('mapleLeaf')
    const yellow = palette.of('yellowLeaf')
    const pine = palette.of('pine')
    const bark = palette.of('bark')
    const strokes = createStrokes()
    placeFoliage(strokes, tree, lightFoliage(tree, { sun, cellM: 0.24, extinction: 0.75 }), camera, sun, {
      leaf(part, brush) {
        lightMix(
          brush,
          maple,
          yellow,
          part.tint > 0.75 ? 0.3 : 0,
          1.35 * part.sun,
          0.85 * part.sky,
          0,
          0.05 + 0.25 * part.sky,
        )
        scale(brush, 1 + 0.14 * part.tint)
      },
      limb(part, brush) {
        light(brush, bark, 1.3 * part.sun, part.sky, 0, 0.12)
      },
    })
    const lit = lightFoliage(plants, { sun, cellM: 0.18, extinction: 0.6 })
    placeFoliage(strokes, plants, lit, camera, sun, borderDye(palette, crownAt))
    const wood = growFarWood({
      seed,
      nearM: 62,
      farM: 120,
      rows: 3,
      halfSlope: camera.centreX / camera.focalPx,
      heightM: [5, 12],
      spacingM: 3.4,
      sprays: 900,
      conifers: 0.12,
      sun,
      groundM: () => 0,
      cover: (x, z) => 0.5 + 0.8 * noise2(x / 17, z / 60, seed + 3),
    })
    placeFoliage(strokes, wood.foliage, wood.lit, camera, sun, {
      leaf(part, brush) {
        light(
          brush,
          part.kind === farWoodKind.conifer ? pine : leaf,
          1.1 * part.sun,
          0.85 * part.sky,
          0,
          0.05 + 0.2 * part.sky,
        )
        throughAir(brush, air, part.z)
      },
      limb(part, brush) {
        light(brush, bark, part.sun, part.sky)
        throughAir(brush, air, part.z)
      },
    })
    sortStrokes(strokes)
    const solids = [
      createGardenFence(camera, palette, seed, sun, (x, y, z) => crownAt(x, y, z) * low.sunAt(along(x, y), back(z, y))),
      ...sowGrass(camera, {
        seed,
        nearM: 3.6,
        farM: fenceZ - 1.2,
        bladesPerM2: 9000,
        widthM: 0.0034,
        sward: plan.sward,
        colour: plan.bladeColour,
      }),
    ].sort((a, b) => b.z - a.z)
    return {
      paint(band) {
        paintClearSky(band, camera, sky)
        paintCumulus(band, camera, cumulus, palette, skyAir)
        paintGround(band, camera, 400, plan.colour)
        paintStrokes(band, strokes, solids)
      },
    }
  },
}
