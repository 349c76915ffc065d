// Frame 1: a meadow with a lone tree under cumulus, sun from the left behind the camera, infrared from 720 nm.
// The tree stands off centre; a trodden path and the shadow of a passing cloud lead there.
import { createAir } from '../paint/air.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import { createCamera, sunDirection } from '../paint/camera.ts'
import { furrowedBark } from '../paint/bark.ts'
import { castFoliage } from '../paint/crown-shadow.ts'
import { createCumulus, paintCumulus } from '../paint/cumulus.ts'
import { createFoliage } from '../paint/foliage.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { sowGrass } from '../paint/grass.ts'
import { paintGround } from '../paint/ground.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { createStrokes, paintStrokes, sortStrokes } from '../paint/strokes.ts'
import { growTree } from '../paint/tree.ts'
import { createTrunk } from '../paint/trunks.ts'
import { createMeadowGround } from './meadow-ground.ts'
import { growHedge, placeMeadowWood } from './meadow-hedge.ts'
import { growMeadowHerbs } from './meadow-herbs.ts'

export const meadow: Scene = {
  id: 'meadow',
  title: 'Meadow with a lone tree',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.8, horizon: 0.6, eyeM: 1.6 })
    const sun = sunDirection(-115, 33)
    const sky = createClearSky(palette, -0.6)
    const air = createAir(palette, 4200, 0.06, 0.5)
    const skyAir = createAir(palette, 26000, 0.12, 1.2)
    const cumulus = createCumulus({
      seed,
      sun,
      cover: -0.2,
      offsetKm: [13, 9],
      reach: 0.64,
      top: 0.5,
    })

    const bark = palette.of('bark')
    const leaf = palette.of('leaf')
    const tree = createFoliage()
    const trunkM = growTree(tree, {
      seed,
      foot: [4.9, 0, 30],
      lean: 0.03,
      bareTrunk: true,
      heightM: 13.2,
      radiusM: 6.8,
      clearM: 2.4,
      lobes: 34,
      points: 5200,
      leafM: 0.105,
      leavesPerTwig: 9,
      twigs: 4,
    })
    const shadow = castFoliage(tree, sun)
    const ground = createMeadowGround(palette, seed, shadow, air)
    const strokes = createStrokes()
    placeFoliage(strokes, tree, lightFoliage(tree, { sun, cellM: 0.36, extinction: 0.95 }), camera, sun, {
      leaf(part, brush) {
        light(brush, leaf, 1.7 * part.sun, part.sky, 0, 0.1 + 0.5 * part.sky)
        scale(brush, 1 + 0.12 * part.tint)
      },
      limb(part, brush) {
        light(brush, bark, 1.5 * part.sun, part.sky, 0, 0.2)
      },
    })
    placeMeadowWood(strokes, camera, palette, seed, sun, ground, air)
    growHedge(strokes, camera, palette, seed, sun, ground, air)
    growMeadowHerbs(strokes, camera, palette, seed, sun, ground)
    sortStrokes(strokes)
    const trunk = createTrunk(
      camera,
      {
        x: 4.9,
        z: 30,
        radiusM: trunkM,
        lean: 0.03,
        topM: 3.1,
        bark: furrowedBark,
        skin: bark,
        second: palette.of('lichen'),
        seed,
      },
      palette.of('leaf'),
      (brush, first, second, share, _x, y, _z, facing) => {
        const facingSun = Math.max(0, facing[0] * sun[0] + facing[1] * sun[1] + facing[2] * sun[2])
        const open = 1 - 0.85 * Math.min(1, Math.max(0, (y - 0.7) / 1.6))
        lightMix(brush, first, second, share, 1.1 * facingSun * open, 0.25 + 0.4 * open, 0, 0.22)
      },
    )
    const solids = [
      ...sowGrass(camera, {
        seed,
        nearM: 1.35,
        farM: 108,
        bladesPerM2: 1700,
        widthM: 0.0037,
        sward: ground.sward,
        colour: ground.bladeColour,
      }),
      trunk,
    ].sort((a, b) => b.z - a.z)
    return {
      paint(band) {
        paintClearSky(band, camera, sky)
        paintCumulus(band, camera, cumulus, palette, skyAir)
        paintGround(band, camera, 4000, ground.colour)
        paintStrokes(band, strokes, solids)
      },
    }
  },
}
