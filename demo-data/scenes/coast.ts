// Frame 8: surf on a rocky beach, a sea stack on the left, a grassed headland on the right, sun from the left; infrared from 590 nm.
// Ground, rocks and water are one height per point, so that foam, wet feet and shadows meet without seams.
import { createAir } from '../paint/air.ts'
import { createCamera, sunDirection } from '../paint/camera.ts'
import { paintCirrus } from '../paint/cirrus.ts'
import { createCumulus, paintCumulus } from '../paint/cumulus.ts'
import { createTracer } from '../paint/height-field.ts'
import { paintLandscape } from '../paint/paint-landscape.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { type Burst, paintSpray } from '../paint/spray.ts'
import { createSunShadow } from '../paint/sun-shadow.ts'
import { coastCeiling, coastHeight, solidHeight } from './coast-land.ts'
import { createCoastShader } from './coast-shade.ts'

/** Where waves are just breaking on rock, far to near. */
const bursts: readonly Burst[] = [
  { x: -38, z: 126, heightM: 9, drops: 2600 },
  { x: -13.6, z: 39, heightM: 3.6, drops: 2600 },
]

export const coast: Scene = {
  id: 'coast',
  title: 'Coast with surf and rocks',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.8, horizon: 0.41, eyeM: 3.4 })
    const sun = sunDirection(-108, 38)
    const sky = createClearSky(palette, -0.5)
    const air = createAir(palette, 9000, 0.06, 0.5)
    const skyAir = createAir(palette, 26000, 0.12, 1.2)
    const cumulus = createCumulus({ seed, sun, cover: -0.2, offsetKm: [3, 5], reach: 0.63, top: 0.36 })
    const tracer = createTracer(
      size,
      camera,
      { height: coastHeight, ceiling: coastCeiling },
      { nearM: 2.4, farM: 9000, step: 0.006 },
    )
    const shadow = createSunShadow(solidHeight, {
      sun,
      reach: 0.66,
      reliefM: 60,
      levels: [
        { fromM: 0, toM: 30, cellM: 0.16 },
        { fromM: 30, toM: 120, cellM: 0.5 },
        { fromM: 120, toM: 900, cellM: 3 },
      ],
    })
    const shade = createCoastShader(palette, camera, sky, sun, shadow.share)
    return {
      paint(band) {
        paintClearSky(band, camera, sky)
        paintCirrus(band, camera, palette, { seed: seed + 2, cover: 0.45, bearingDeg: 25 })
        paintCumulus(band, camera, cumulus, palette, skyAir)
        paintLandscape(band, camera, tracer.trace(band), air, shade)
        paintSpray(band, camera, palette, bursts, seed + 5)
      },
    }
  },
}
