// Frame 5: a courtyard half in shade, 590 nm. The line of the shadow crosses paving and plaster, so both can be measured in
// sun and in open shade; the vine and the pots bring leaves into both.
import { createAir } from '../paint/air.ts'
import { createCamera, sunDirection } from '../paint/camera.ts'
import { createCumulus, paintCumulus } from '../paint/cumulus.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import { createPot, potCasters } from '../paint/pots.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { createStrokes, paintStrokes, sortStrokes } from '../paint/strokes.ts'
import { buildCourtyard } from './courtyard-building.ts'
import { createLeafDye } from './courtyard-dye.ts'
import { pots } from './courtyard-plan.ts'
import { growCourtyardPlants } from './courtyard-plants.ts'
import { courtyardLight } from './courtyard-walls.ts'

export const courtyard: Scene = {
  id: 'courtyard',
  title: 'Courtyard, half in shade',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.72, horizon: 0.58, eyeM: 1.6 })
    const sun = sunDirection(124, 41)
    const sky = createClearSky(palette, 0.3)
    const cumulus = createCumulus({ seed, sun, cover: -0.2, offsetKm: [11, 9], reach: 0.7, top: 0.55 })
    const skyAir = createAir(palette, 26000, 0.12, 1.2)
    const air = createAir(palette, 3000, 0.06, 0.5)
    const around = courtyardLight(sun)
    const withPots = {
      ...around,
      casters: [...around.casters, ...pots.flatMap((pot) => potCasters(pot, sun[0], sun[2]))],
    }
    const plants = growCourtyardPlants(seed)
    const near = [plants.vine, plants.fallen, ...plants.potted]
    const building = buildCourtyard(camera, palette, seed, withPots, near)

    const dye = createLeafDye(palette, withPots, air)
    const behind = createStrokes()
    const treeLight = lightFoliage(plants.tree, { sun, cellM: 0.36, extinction: 0.9 })
    placeFoliage(behind, plants.tree, treeLight, camera, sun, dye('leaf', true))
    sortStrokes(behind)
    const strokes = createStrokes()
    near.forEach((plant, i) => {
      const onWall = plant === plants.vine
      const light = lightFoliage(plant, { sun, cellM: onWall ? 0.09 : 0.05, extinction: onWall ? 0.4 : 0.8 })
      const leaf = plant === plants.fallen ? 'driedLeaf' : i % 3 === 1 ? 'mapleLeaf' : 'leaf'
      placeFoliage(strokes, plant, light, camera, sun, dye(leaf, false))
    })
    sortStrokes(strokes)
    const solids = pots
      .map((pot) => {
        const clay = palette.of(pot.kind === 'clay' ? 'brick' : 'concrete')
        return createPot(camera, palette, pot, clay, withPots, around.casters)
      })
      .toSorted((a, b) => b.z - a.z)

    return {
      paint(band) {
        paintClearSky(band, camera, sky)
        paintCumulus(band, camera, cumulus, palette, skyAir)
        paintStrokes(band, behind)
        for (const paint of building) paint(band)
        paintStrokes(band, strokes, solids)
      },
    }
  },
}
