// Frame 7: a garden in high summer without a filter: lawn, a path of slabs to a bench, borders in flower, a fruit tree.
// Visible and infrared light arrive together, so greens are pale and everything that grows leans to magenta.
import { createAir } from '../paint/air.ts'
import { createCamera, sunDirection } from '../paint/camera.ts'
import { castFoliage } from '../paint/crown-shadow.ts'
import { createCumulus, paintCumulus } from '../paint/cumulus.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { sowGrass } from '../paint/grass.ts'
import { paintGround } from '../paint/ground.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { createStrokes, paintStrokes, sortStrokes } from '../paint/strokes.ts'
import { sunFleck } from '../paint/sun-flecks.ts'
import { createBench } from './garden-bench.ts'
import { createGardenFence } from './garden-fence.ts'
import { bench, createGardenPlan, fenceZ } from './garden-plan.ts'
import { borderDye, growBorders } from './garden-plants.ts'
import { growFruitTree, growShadeTree, placeFruitTree, placeNeighbours } from './garden-trees.ts'

export const garden: Scene = {
  id: 'garden',
  title: 'Garden without a filter',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.89, horizon: 0.46, eyeM: 1.62 })
    const sun = sunDirection(-125, 41)
    const sky = createClearSky(palette, -0.5)
    const skyAir = createAir(palette, 26000, 0.12, 1.2)
    const air = createAir(palette, 3500, 0.06, 0.5)
    const cumulus = createCumulus({ seed, sun, cover: -0.2, offsetKm: [4, 6], reach: 0.58, top: 0.45 })

    const fruit = growFruitTree(seed)
    const plants = growBorders(seed)
    const crown = castFoliage(fruit.tree, sun)
    const beside = castFoliage(growShadeTree(seed), sun)
    const low = castFoliage(plants, sun)
    const along = (x: number, y: number) => x - (sun[0] * y) / sun[1]
    const back = (z: number, y: number) => z - (sun[2] * y) / sun[1]
    const crownAt = (x: number, y: number, z: number) => {
      const [groundX, groundZ] = [along(x, y), back(z, y)]
      return sunFleck(crown.sunAt(groundX, groundZ) * beside.sunAt(groundX, groundZ), groundX, groundZ, seed + 61)
    }
    const sunAt = (x: number, y: number, z: number) => crownAt(x, y, z) * low.sunAt(along(x, y), back(z, y))
    const plan = createGardenPlan(palette, seed, sun[1], (x, z) => sunAt(x, 0, z))

    const strokes = createStrokes()
    const trunk = placeFruitTree(strokes, camera, palette, seed, sun, fruit, crownAt)
    placeNeighbours(strokes, camera, palette, seed, sun, air)
    const lit = lightFoliage(plants, { sun, cellM: 0.12, extinction: 0.8 })
    placeFoliage(strokes, plants, lit, camera, sun, borderDye(palette, crownAt))
    sortStrokes(strokes)
    const solids = [
      trunk,
      createGardenFence(camera, palette, seed, sun, sunAt),
      createBench(camera, palette, seed, sun, bench, sunAt),
      ...sowGrass(camera, {
        seed,
        nearM: 3.6,
        farM: fenceZ - 0.2,
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
