// The camera's matrix for visible light, where the file or LibRaw's table has one: balanced `cameraRgb` to XYZ under D65, and
// what balances them. Both belong to the glass the camera was made with, so that they say how far from its scale one is.
import type { FrameFacts } from '../frame/frame.ts'
import { rgbToXyz, SRGB_PRIMARIES } from '../colour/primaries.ts'
import { multiply } from '../math/mat3.ts'
import type { LibRawMetadata } from './libraw.ts'

/** Row-major, or null where the decoder knows no matrix: it then gives the identity to linear sRGB. */
export function cameraToXyz({ color_data: { rgb_cam: rows }, colors }: LibRawMetadata): number[] | null {
  const toSrgb = rows.slice(0, 3).flatMap((row) => row.slice(0, 3))
  const isIdentity = toSrgb.every((value, i) => value === (i % 4 === 0 ? 1 : 0))
  if (colors !== 3 || isIdentity || !toSrgb.every(Number.isFinite)) return null
  return multiply(rgbToXyz(SRGB_PRIMARIES), toSrgb)
}

/** (log2 R/G, log2 B/G) of a grey in D65 daylight, or undefined where the decoder knows no multipliers for it. */
export function daylightNeutral({ color_data: { pre_mul: gains } }: LibRawMetadata): FrameFacts['daylightNeutral'] {
  const [red, green, blue] = gains
  return Math.min(red, green, blue) > 0 ? [Math.log2(green / red), Math.log2(green / blue)] : undefined
}
