// Frame 2: a lake with wooded hills and a mountain, sun from the left behind the camera, infrared from 590 nm.
// A jetty leads out between reeds and water lilies; the water mirrors the mountain and the clouds.
import { createAir } from '../paint/air.ts'
import { type Camera, createCamera, sunDirection } from '../paint/camera.ts'
import type { Band } from '../paint/canvas.ts'
import { createCumulus, paintCumulus } from '../paint/cumulus.ts'
import { createTracer, type Tracer } from '../paint/height-field.ts'
import { paintLakeWater } from '../paint/lake-water.ts'
import { createMirror, mirrorStrokes, mirrorView } from '../paint/mirror.ts'
import { paintLandscape } from '../paint/paint-landscape.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { paintStrokes, type Strokes } from '../paint/strokes.ts'
import { createSunShadow } from '../paint/sun-shadow.ts'
import { createWoodedShader } from '../paint/wooded-slope.ts'
import { createLakeForeground } from './lake-foreground.ts'
import { createLakeLand, farM, inlandM, shoreM } from './lake-land.ts'
import { growLakeTrees, placeLakeTrees } from './lake-trees.ts'

const reach = 0.66
const mirrorWidth = 1700

export const lake: Scene = {
  id: 'lake',
  title: 'Lake shore with reeds',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.78, horizon: 0.42, eyeM: 2.1 })
    const sun = sunDirection(-105, 34)
    const sky = createClearSky(palette, -0.6)
    const air = createAir(palette, 9000, 0.06, 0.5)
    const skyAir = createAir(palette, 26000, 0.12, 1.2)
    const cumulus = createCumulus({
      seed: seed + 3,
      sun,
      cover: -0.17,
      offsetKm: [20, 30],
      reach,
      top: 0.5,
      columns: 620,
    })
    const land = createLakeLand(reach)
    const shadow = createSunShadow(land.height, {
      sun,
      reach,
      reliefM: 220,
      levels: [
        { fromM: 380, toM: 1000, cellM: 3 },
        { fromM: 1000, toM: 2600, cellM: 4 },
        { fromM: 2600, toM: farM, cellM: 20 },
      ],
    })
    const trees = placeLakeTrees(growLakeTrees(land, seed, reach, sun), camera, palette, sun, air)
    const foreground = createLakeForeground(palette, camera, sun, seed)

    const paintDistance = (band: Band, from: Camera, tracer: Tracer, wood: Strokes) => {
      paintClearSky(band, from, sky)
      paintCumulus(band, from, cumulus, palette, skyAir)
      paintLandscape(band, from, tracer.trace(band), air, createWoodedShader(palette, from, land, sun, shadow))
      paintStrokes(band, wood)
    }
    const view = mirrorView(camera, size, Math.min(size.width, mirrorWidth))
    const below = view.camera
    const mirror = createMirror(view, (band) => {
      const tracer = createTracer(view.size, below, land, { nearM: shoreM, farM, step: 0.004 })
      paintDistance(band, below, tracer, mirrorStrokes(trees, camera, below))
      foreground.paintMirrored(band, below)
    })
    const tracer = createTracer(size, camera, land, { nearM: shoreM, farM, step: 0.003 })
    const isWater = (x: number, z: number) => z < shoreM || inlandM(x, z) < 0
    return {
      paint(band) {
        paintDistance(band, camera, tracer, trees)
        paintLakeWater(band, camera, palette, mirror, seed, isWater)
        foreground.paint(band)
      },
    }
  },
}
