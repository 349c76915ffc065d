// Neutral gains as lights: the chromaticity under which a camera, with the glass it was made with, would have needed these gains,
// and back. Infrared neutrals mostly lie where no visible light does; then there is no answer.
import { invert, transform } from '../math/mat3.ts'
import type { Chromaticity } from './primaries.ts'

/** A camera's matrix for visible light, as in the facts of a frame. */
export interface CameraWhite {
  /** XYZ (D65-relative) from balanced `cameraRgb`, row-major. */
  readonly cameraToXyz: readonly number[]
  /** (log2 R/G, log2 B/G) of a grey in daylight: what balances. */
  readonly daylightNeutral: readonly [number, number]
}

/** Gains in stops, red and blue relative to green. */
interface Gains {
  readonly redStops: number
  readonly blueStops: number
}

/** CIE 1931 (x, y) of the light that these gains make grey, or null where no positive XYZ has such ratios. */
export function chromaticityOfGains(camera: CameraWhite, { redStops, blueStops }: Gains): Chromaticity | null {
  const [red, blue] = camera.daylightNeutral
  const xyz = transform(camera.cameraToXyz, [2 ** (-redStops - red), 1, 2 ** (-blueStops - blue)])
  const sum = xyz[0] + xyz[1] + xyz[2]
  return Math.min(...xyz) > 0 ? [xyz[0] / sum, xyz[1] / sum] : null
}

/** The gains that make a light of CIE 1931 (x, y) grey, or null where the matrix leaves a channel without signal. */
export function gainsOfChromaticity(camera: CameraWhite, [x, y]: Chromaticity): Gains | null {
  const [red, green, blue] = transform(invert(camera.cameraToXyz), [x, y, 1 - x - y])
  if (!(Math.min(red, green, blue) > 0)) return null
  return {
    redStops: Math.log2(green / red) - camera.daylightNeutral[0],
    blueStops: Math.log2(green / blue) - camera.daylightNeutral[1],
  }
}
