// High ice cloud: combed streaks on a plane far above, thin enough that the sky shows through.
// Slopes are projected as (across ÷ e, 1 ÷ e) with e a little above the true elevation, so streaks converge at the horizon.
import type { Palette } from '../light/triplets.ts'
import { createBrush, light } from './brush.ts'
import type { Camera } from './camera.ts'
import { type Band, coverIndex } from './canvas.ts'
import { fbm2 } from './noise.ts'

export interface CirrusOptions {
  readonly seed: number
  /** Densest cover 0…1; .5 is generous. */
  readonly cover: number
  /** Turns the streaks, degrees: 0 runs away from the camera. */
  readonly bearingDeg: number
}

/** Cover 0…1 along slopes `across`, `up` with pixel width `pixel`. */
function cirrusCover(options: CirrusOptions, across: number, up: number, pixel: number): number {
  const e = Math.max(0, up) + 0.06
  const a = (options.bearingDeg * Math.PI) / 180
  const px = across / e
  const pz = 1 / e
  const u = px * Math.cos(a) + pz * Math.sin(a)
  const v = pz * Math.cos(a) - px * Math.sin(a)
  const fp = (pixel / e) * 1.5
  const bend = 0.5 * fbm2(u * 0.35, v * 0.35, 3, options.seed + 9)
  const streaks = fbm2(u * 1.5 + bend, v * 0.16 + bend * 0.4, 7, options.seed, fp)
  const fields = fbm2(u * 0.16, v * 0.12, 3, options.seed + 20)
  const cover = (streaks * 0.62 + fields * 0.9 - 0.12) * options.cover * 1.6
  return cover <= 0 ? 0 : (options.cover * cover) / (cover + 0.55) / (1 + 0.16 / (up + 0.05))
}

export function paintCirrus(band: Band, camera: Camera, palette: Palette, options: CirrusOptions): void {
  const brush = createBrush()
  light(brush, palette.of('cloud'), 0.85, 0.9)
  const pixel = 1 / camera.focalPx
  const last = Math.min(band.y1, Math.ceil(camera.horizonY))
  for (let y = band.y0; y < last; y++) {
    const up = (camera.horizonY - y - 0.5) * pixel
    const row = (y - band.y0) * band.width
    for (let x = 0; x < band.width; x++) {
      const cover = cirrusCover(options, (x + 0.5 - camera.centreX) * pixel, up, pixel)
      if (cover > 0.002) coverIndex(band, row + x, cover, brush)
    }
  }
}
