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
  /** As `colour` for the pixels of a whole row, the slow parts worked out at every 16th only. */
  row(camera: Camera, y: number, out: (x: number, level: number) => void): void
  /** Colour of level 1. */
  readonly white: readonly [number, number, number]
}

/** Columns between places where drift and high cloud are worked out. */
const stepPx = 16

/** Drift of the low deck in x and z, relief of the high deck. */
type Broad = [number, number, number]

export function createOvercast(palette: Palette, options: OvercastOptions): Overcast {
  const t = palette.of('white').t
  const { seed, brightAcross, brightUp } = options

  const broadAt = (across: number, slope: number, pixel: number, out: Broad) => {
    const e = slope + 0.075
    const px = across / e
    const pz = 1 / e
    const fp = pixel / e
    out[0] = fbm2(px * 0.55, pz * 0.4, 3, seed + 30, fp * 0.55)
    out[1] = fbm2(px * 0.55 + 7, pz * 0.4, 3, seed + 33, fp * 0.55)
    out[2] = fbm2(px * 0.3 + 0.3 * out[1], pz * 0.22 - 0.3 * out[0], 5, seed + 40, fp * 0.3)
  }
  const levelAt = (across: number, slope: number, pixel: number, broad: Broad) => {
    const e = slope + 0.075
    const px = across / e
    const pz = 1 / e
    const low = fbm2(px * 0.95 + 0.55 * broad[0], pz * 0.62 + 0.55 * broad[1], 7, seed, pixel / e)
    const sine = slope / Math.sqrt(1 + across * across + slope * slope)
    const gradient = (1 + 2 * sine) / 3 + 0.28
    const near = slope / (slope + 0.07)
    const da = across - brightAcross
    const du = slope - brightUp
    const patch = 0.55 * Math.exp(-(da * da) / 0.09 - (du * du) / 0.025) * (0.75 - 0.5 * low)
    const folds = low > 0 ? low : low * 0.55
    const relief = (0.36 * folds + 0.24 * broad[2]) * near
    return Math.max(0.12, (gradient + patch) * (0.93 - relief))
  }
  const broad: Broad = [0, 0, 0]
  return {
    white: [t[6], t[7], t[8]],
    colour(across, up, pixel, out) {
      const slope = Math.max(0, up)
      broadAt(across, slope, pixel, broad)
      const level = levelAt(across, slope, pixel, broad)
      for (let c = 0; c < 3; c++) out[c] = t[6 + c] * level
    },
    row(camera, y, out) {
      const pixel = 1 / camera.focalPx
      const slope = Math.max(0, (camera.horizonY - y - 0.5) * pixel)
      const across = (x: number) => (x + 0.5 - camera.centreX) * pixel
      const width = 2 * camera.centreX
      const from: Broad = [0, 0, 0]
      const to: Broad = [0, 0, 0]
      broadAt(across(0), slope, pixel, to)
      for (let x = 0; x < width; x += stepPx) {
        from[0] = to[0]
        from[1] = to[1]
        from[2] = to[2]
        broadAt(across(x + stepPx), slope, pixel, to)
        for (let i = 0; i < stepPx && x + i < width; i++) {
          const k = i / stepPx
          broad[0] = from[0] + (to[0] - from[0]) * k
          broad[1] = from[1] + (to[1] - from[1]) * k
          broad[2] = from[2] + (to[2] - from[2]) * k
          out(x + i, levelAt(across(x + i), slope, pixel, broad))
        }
      }
    },
  }
}

/** Fills the band above the horizon, and its horizon colour below. */
export function paintOvercast(band: Band, camera: Camera, overcast: Overcast): void {
  const horizon = new Float64Array(3)
  overcast.colour(0, 0, 1 / camera.focalPx, horizon)
  band.material.fill(materialNames.indexOf('nothing'))
  band.sun.fill(0)
  const [r, g, b] = overcast.white
  for (let y = band.y0; y < band.y1; y++) {
    const row = (y - band.y0) * band.width
    if (y >= camera.horizonY) {
      band.r.fill(horizon[0], row, row + band.width)
      band.g.fill(horizon[1], row, row + band.width)
      band.b.fill(horizon[2], row, row + band.width)
      continue
    }
    overcast.row(camera, y, (x, level) => {
      band.r[row + x] = r * level
      band.g[row + x] = g * level
      band.b[row + x] = b * level
    })
  }
}
