// Frame 6: dunes in low sun from the left, infrared from 850 nm. A placed crest winds from the lower right to a summit on the
// left: one side lit and rippled, the other in shade. Tufts on the lit side throw long shadows.
import { createAir } from '../paint/air.ts'
import { createCamera, sunDirection } from '../paint/camera.ts'
import { paintCirrus } from '../paint/cirrus.ts'
import { duneCeiling, duneHeight } from '../paint/dune-field.ts'
import { createDuneGrass } from '../paint/dune-grass.ts'
import { hashUnit } from '../paint/hash.ts'
import { createTracer } from '../paint/height-field.ts'
import { paintLandscape } from '../paint/paint-landscape.ts'
import { createSandShader } from '../paint/sand.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { createSunShadow } from '../paint/sun-shadow.ts'

/** Where grass grows: middle and radius of each group, in metres. */
const clusters = [
  { x: -2.6, z: 6.4, radiusM: 0.9, count: 5 },
  { x: -6.2, z: 12, radiusM: 1.6, count: 8 },
  { x: -11, z: 21, radiusM: 2.6, count: 9 },
  { x: 17, z: 31, radiusM: 3, count: 10 },
  { x: 24, z: 52, radiusM: 6, count: 14 },
  { x: -30, z: 62, radiusM: 8, count: 12 },
]

export const dunes: Scene = {
  id: 'dunes',
  title: 'Dunes in low sun',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.8, horizon: 0.42, eyeM: duneHeight(0, 0, 0) + 1.7 })
    const sun = sunDirection(-78, 18)
    const sky = createClearSky(palette, -0.6)
    const air = createAir(palette, 9000, 0.06, 0.5)
    const tracer = createTracer(
      size,
      camera,
      { height: duneHeight, ceiling: duneCeiling },
      { nearM: 1.2, farM: 4000, step: 0.004 },
    )
    const shadow = createSunShadow(duneHeight, {
      sun,
      reach: 0.66,
      reliefM: 24,
      levels: [
        { fromM: 0, toM: 30, cellM: 0.12 },
        { fromM: 30, toM: 130, cellM: 0.35 },
        { fromM: 130, toM: 600, cellM: 1.6 },
        { fromM: 600, toM: 4000, cellM: 9 },
      ],
    })
    const tufts = clusters.flatMap(({ x, z, radiusM, count }, c) =>
      Array.from({ length: count }, (_, i) => {
        const turn = 6.283 * hashUnit(seed, c, i, 1)
        const out = radiusM * Math.sqrt(hashUnit(seed, c, i, 2))
        return {
          x: x + out * Math.cos(turn),
          z: z + out * Math.sin(turn),
          heightM: 0.25 + 0.55 * hashUnit(seed, c, i, 3) ** 1.5,
        }
      }),
    )
    const grass = createDuneGrass(palette, camera, tufts, duneHeight, sun, shadow.share)
    const sunShare = (x: number, y: number, z: number) => shadow.share(x, y, z) * grass.sunLeft(x, z)
    const shade = createSandShader(palette, camera, duneHeight, sun, sunShare)
    return {
      paint(band) {
        paintClearSky(band, camera, sky)
        paintCirrus(band, camera, palette, { seed: seed + 2, cover: 0.5, bearingDeg: 40 })
        paintLandscape(band, camera, tracer.trace(band), air, shade)
        grass.paint(band)
      },
    }
  },
}
