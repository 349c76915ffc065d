// Clear sky: skylight from the zenith down to the horizon, brighter towards the horizon and towards the sun.
// Fills whole rows of a band, so it also clears what was there.
import { materialNames } from '../light/materials.ts'
import type { Palette } from '../light/triplets.ts'
import type { Camera } from './camera.ts'
import type { Band } from './canvas.ts'

export interface ClearSky {
  /** Sets out[0…2] to the sky's linear camera RGB at slope `up` = Δheight/distance and `across` = X/distance. */
  colour(across: number, up: number, out: Float64Array): void
}

/** `sunSide` −1…1: how much brighter the right edge is than the left (sun to the right is positive). */
export function createClearSky(palette: Palette, sunSide: number): ClearSky {
  const t = palette.of('white').t
  const sky = [t[3], t[4], t[5]]
  const hazeSun = [t[0] * 0.05, t[1] * 0.05, t[2] * 0.05]
  return {
    colour(across, up, out) {
      const e = Math.atan2(Math.max(0, up), Math.sqrt(1 + across * across))
      const level = (0.34 + 0.95 * Math.exp(-5.5 * e)) * (1 + 0.22 * sunSide * Math.max(-1, Math.min(1, across)))
      const haze = Math.exp(-9 * e)
      for (let c = 0; c < 3; c++) out[c] = sky[c] * level + hazeSun[c] * haze
    },
  }
}

/** Columns between places where the sky is worked out; it changes so slowly that lines between them are exact enough. */
const stepPx = 16

/** Paints the sky above the horizon (and its horizon colour below) into every row of the band. */
export function paintClearSky(band: Band, camera: Camera, sky: ClearSky): void {
  const from = new Float64Array(3)
  const to = new Float64Array(3)
  const nothing = materialNames.indexOf('nothing')
  band.material.fill(nothing)
  band.sun.fill(0)
  const planes = [band.r, band.g, band.b]
  for (let y = band.y0; y < band.y1; y++) {
    const up = (camera.horizonY - y - 0.5) / camera.focalPx
    const row = (y - band.y0) * band.width
    sky.colour((0.5 - camera.centreX) / camera.focalPx, up, to)
    for (let x = 0; x < band.width; x += stepPx) {
      from.set(to)
      sky.colour((x + stepPx + 0.5 - camera.centreX) / camera.focalPx, up, to)
      const end = Math.min(stepPx, band.width - x)
      for (let c = 0; c < 3; c++) {
        const plane = planes[c]
        const slope = (to[c] - from[c]) / stepPx
        for (let i = 0; i < end; i++) plane[row + x + i] = from[c] + slope * i
      }
    }
  }
}
