// A closed deck of stratus in overcast light: brighter overhead as in the CIE overcast sky, two drifting layers of relief,
// one soft bright patch where the sun would be, all fading into haze at the horizon.
import { materialNames } from '../light/materials.ts'
import type { Palette } from '../light/triplets.ts'
import type { Camera } from './camera.ts'
import type { Band } from './canvas.ts'
import { fbm2 } from './noise.ts'

export interface OvercastOptions {
  readonly seed: number
  /** Slopes of the bright patch. */
  readonly brightAcross: number
  readonly brightUp: number
}

export interface Overcast {
  /** Sets out[0…2] to linear camera RGB along slopes `across`, `up` (up may be steep: puddles mirror it). */
  colour(across: number, up: number, pixel: number, out: Float64Array): void
}

export function createOvercast(palette: Palette, options: OvercastOptions): Overcast {
  const t = palette.of('white').t
  const { seed, brightAcross, brightUp } = options
  return {
    colour(across, up, pixel, out) {
      const slope = Math.max(0, up)
      const e = slope + 0.075
      const px = across / e
      const pz = 1 / e
      const fp = pixel / e
      const warpX = fbm2(px * 0.55, pz * 0.4, 3, seed + 30, fp * 0.55)
      const warpZ = fbm2(px * 0.55 + 7, pz * 0.4, 3, seed + 33, fp * 0.55)
      const low = fbm2(px * 0.95 + 0.55 * warpX, pz * 0.62 + 0.55 * warpZ, 7, seed, fp)
      const high = fbm2(px * 0.3 + 0.3 * warpZ, pz * 0.22 - 0.3 * warpX, 5, seed + 40, fp * 0.3)
      const sine = slope / Math.sqrt(1 + across * across + slope * slope)
      const gradient = (1 + 2 * sine) / 3 + 0.28
      const near = slope / (slope + 0.07)
      const da = across - brightAcross
      const du = up - brightUp
      const patch = 0.55 * Math.exp(-(da * da) / 0.09 - (du * du) / 0.025) * (0.75 - 0.5 * low)
      const folds = low > 0 ? low : low * 0.55
      const relief = (0.36 * folds + 0.24 * high) * near
      const level = Math.max(0.12, (gradient + patch) * (0.93 - relief))
      for (let c = 0; c < 3; c++) out[c] = t[6 + c] * level
    },
  }
}

/** Fills the band above the horizon, and its horizon colour below. */
export function paintOvercast(band: Band, camera: Camera, overcast: Overcast): void {
  const out = new Float64Array(3)
  const nothing = materialNames.indexOf('nothing')
  const pixel = 1 / camera.focalPx
  for (let y = band.y0; y < band.y1; y++) {
    const up = Math.max(0, (camera.horizonY - y - 0.5) * pixel)
    const row = (y - band.y0) * band.width
    for (let x = 0; x < band.width; x++) {
      if (up > 0 || x === 0) overcast.colour((x + 0.5 - camera.centreX) * pixel, up, pixel, out)
      band.r[row + x] = out[0]
      band.g[row + x] = out[1]
      band.b[row + x] = out[2]
      band.material[row + x] = nothing
      band.sun[row + x] = 0
    }
  }
}
