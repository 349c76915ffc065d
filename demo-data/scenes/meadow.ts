// Frame 1: a meadow with a lone tree under cumulus, sun from the left behind the camera, infrared from 720 nm.
// The tree stands off centre and its shadow and the path lead there.
import { createAir, throughAir } from '../paint/air.ts'
import { createBrush, lightMix, scale } from '../paint/brush.ts'
import { createCamera, groundDistance, sunDirection } from '../paint/camera.ts'
import { createCumulus, paintCumulus } from '../paint/cumulus.ts'
import { coverSpan } from '../paint/canvas.ts'
import { fbm2 } from '../paint/noise.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'

export const meadow: Scene = {
  id: 'meadow',
  title: 'Meadow with a lone tree',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.8, horizon: 0.58, eyeM: 1.6 })
    const sky = createClearSky(palette, -0.6)
    const air = createAir(palette, 6000, 0.06, 0.5)
    const sun = sunDirection(-110, 31)
    const [ox, oz] = (process.env.OFF ?? '0,0').split(',').map(Number)
    const cumulus = createCumulus({
      seed,
      sun,
      cover: Number(process.env.COVER ?? -0.1),
      offsetKm: [ox, oz],
      reach: 0.64,
      top: 0.5,
      columns: Number(process.env.COLS ?? 700),
    })
    const skyAir = createAir(palette, 26000, 0.12, 1.2)
    const grass = palette.of('grass')
    const dry = palette.of('dryGrass')
    return {
      paint(band) {
        paintClearSky(band, camera, sky)
        paintCumulus(band, camera, cumulus, palette, skyAir)
        const brush = createBrush()
        for (let y = Math.max(band.y0, Math.ceil(camera.horizonY)); y < band.y1; y++) {
          const z = groundDistance(camera, y + 0.5)
          for (let x = 0; x < band.width; x++) {
            const worldX = ((x + 0.5 - camera.centreX) * z) / camera.focalPx
            const n = fbm2(worldX / 3, z / 3, 7, 11, z / camera.focalPx / 3)
            lightMix(brush, grass, dry, 0.5 + 0.3 * n, 0.6, 1)
            scale(brush, 0.7 + 0.3 * n)
            throughAir(brush, air, z)
            coverSpan(band, y, x, x + 1, 1, brush)
          }
        }
      },
    }
  },
}
