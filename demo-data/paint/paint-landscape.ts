// Colours what a tracer found: the surface behind an edge first, then the nearer one with its share of the pixel.
import { type Air, throughAir } from './air.ts'
import { type Brush, createBrush } from './brush.ts'
import type { Camera } from './camera.ts'
import { type Band, coverIndex } from './canvas.ts'
import type { Sight } from './height-field.ts'

/** Sets the brush to the surface at X, Z as seen without air. */
export type Shade = (x: number, z: number, brush: Brush) => void

/** Paints every pixel of the band in which `sight` holds a surface. */
export function paintLandscape(band: Band, camera: Camera, sight: Sight, air: Air, shade: Shade): void {
  const brush = createBrush()
  const { near, share, behind, covered } = sight
  const put = (i: number, z: number, coverage: number) => {
    shade((((i % band.width) + 0.5 - camera.centreX) * z) / camera.focalPx, z, brush)
    throughAir(brush, air, z)
    coverIndex(band, i, coverage, brush)
  }
  for (let i = 0; i < near.length; i++) {
    if (share[i] === 0) continue
    if (behind[i] > 0) put(i, behind[i], covered[i])
    put(i, near[i], Math.min(1, share[i]))
  }
}
