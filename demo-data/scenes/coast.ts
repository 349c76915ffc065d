import { createAir } from '../paint/air.ts'
import { light } from '../paint/brush.ts'
import { createCamera, sunDirection } from '../paint/camera.ts'
import { createTracer } from '../paint/height-field.ts'
import { paintLandscape } from '../paint/paint-landscape.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { createSunShadow } from '../paint/sun-shadow.ts'
import { coastCeiling, createCoastLand } from './coast-land.ts'

export const coast: Scene = {
  id: 'coast',
  title: 'Coast with surf',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.75, horizon: 0.4, eyeM: 3.4 })
    const sun = sunDirection(-72, 36)
    const sky = createClearSky(palette, -0.6)
    const air = createAir(palette, 6000, 0.06, 0.5)
    const land = createCoastLand()
    const height = (x: number, z: number, fp: number) => Math.max(0, land.height(x, z, fp))
    const t0 = performance.now()
    const shadow = createSunShadow(land.height, {
      sun,
      reach: 0.68,
      reliefM: 4,
      levels: [
        { fromM: 5, toM: 30, cellM: 0.035 },
        { fromM: 30, toM: 110, cellM: 0.14 },
        { fromM: 110, toM: 800, cellM: 1 },
      ],
    })
    console.log('shadow', performance.now() - t0)
    const tracer = createTracer(size, camera, { height, ceiling: coastCeiling }, { nearM: 4, farM: 4000, step: 0.004 })
    const sand = palette.of('sand')
    const rock = palette.of('rock')
    const grass = palette.of('grass')
    return {
      paint(band) {
        paintClearSky(band, camera, sky)
        const t1 = performance.now()
        const sight = tracer.trace(band)
        console.log('trace', performance.now() - t1)
        paintLandscape(band, camera, sight, air, (x, z, brush) => {
          const fp = z / camera.focalPx
          const y = land.height(x, z, fp)
          const kind = land.kind
          const e = Math.max(0.01, fp)
          const sx = (land.height(x + e, z, fp) - land.height(x - e, z, fp)) / (2 * e)
          const sz = (y - land.height(x, z - e, fp)) / e
          const n = 1 / Math.sqrt(1 + sx * sx + sz * sz)
          const f = Math.max(0, (sun[1] - sx * sun[0] - sz * sun[2]) * n) * shadow.share(x, y, z)
          light(brush, y < 0 ? palette.of('water') : kind === 'beach' ? sand : kind === 'headland' && n > 0.8 ? grass : rock, f, 0.7)
        })
      },
    }
  },
}
