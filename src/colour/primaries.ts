// RGB primaries and whites as CIE 1931 xy chromaticities, and the matrices to XYZ (white Y = 1) that follow from them.
import { diagonal, invert, type Mat3, multiply, transform, type Vec3 } from '../math/mat3.ts'

export type Chromaticity = readonly [x: number, y: number]

export interface RgbPrimaries {
  readonly red: Chromaticity
  readonly green: Chromaticity
  readonly blue: Chromaticity
  readonly white: Chromaticity
}

/** CIE D65 and D50 in the four digits that the RGB standards and CSS Color 4 use. */
export const D65: Chromaticity = [0.3127, 0.329]
export const D50: Chromaticity = [0.3457, 0.3585]

/** IEC 61966-2-1 (sRGB), ITU-R BT.709. */
export const SRGB_PRIMARIES: RgbPrimaries = { red: [0.64, 0.33], green: [0.3, 0.6], blue: [0.15, 0.06], white: D65 }
/** SMPTE EG 432-1 primaries with D65, as in CSS Color 4 `display-p3`. */
export const DISPLAY_P3_PRIMARIES: RgbPrimaries = {
  red: [0.68, 0.32],
  green: [0.265, 0.69],
  blue: [0.15, 0.06],
  white: D65,
}
/** ITU-R BT.2020-2 table 3. */
export const REC2020_PRIMARIES: RgbPrimaries = {
  red: [0.708, 0.292],
  green: [0.17, 0.797],
  blue: [0.131, 0.046],
  white: D65,
}
/** ISO 22028-2 (ROMM RGB), D50. */
export const ROMM_PRIMARIES: RgbPrimaries = {
  red: [0.7347, 0.2653],
  green: [0.1596, 0.8404],
  blue: [0.0366, 0.0001],
  white: D50,
}

/** XYZ of a chromaticity at Y = 1. */
function whiteXyz([x, y]: Chromaticity): Vec3 {
  return [x / y, 1, (1 - x - y) / y]
}

/** Linear RGB to XYZ under the primaries' own white: each primary scaled so that (1, 1, 1) gives the white. */
export function rgbToXyz({ red, green, blue, white }: RgbPrimaries): number[] {
  const xyz = [red, green, blue].map(([x, y]) => [x, y, 1 - x - y])
  const columns = [0, 1, 2].flatMap((row) => xyz.map((primary) => primary[row]))
  return multiply(columns, diagonal(transform(invert(columns), whiteXyz(white))))
}

/** Bradford cone responses, ICC.1:2022 annex E (constants from memory, held to colorjs.io by the test). */
const BRADFORD: Mat3 = [0.8951, 0.2664, -0.1614, -0.7502, 1.7135, 0.0367, 0.0389, -0.0685, 1.0296]

/** XYZ under one white to XYZ under another, by Bradford scaling. */
export function adaptWhite(from: Chromaticity, to: Chromaticity): number[] {
  const source = transform(BRADFORD, whiteXyz(from))
  const target = transform(BRADFORD, whiteXyz(to))
  const scale = diagonal(target.map((response, i) => response / source[i]))
  return multiply(invert(BRADFORD), multiply(scale, BRADFORD))
}
