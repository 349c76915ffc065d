// CIELAB (CIE 15:2004) of linear `workingRgb` under its own white, D65: the place where differences of finished colours are told.
import { transform } from '../math/mat3.ts'
import { workingToXyz } from './working-space.ts'

/** Where the cube root gives way to its tangent, CIE 15:2004 8.2.1. */
const KNEE = (6 / 29) ** 3
const root = (share: number) => (share > KNEE ? Math.cbrt(share) : share / (3 * (6 / 29) ** 2) + 4 / 29)

const white = transform(workingToXyz, [1, 1, 1])

/** Lightness, a and b; lightness 100 is (1, 1, 1), and what is brighter lies above. */
export function workingToLab(rgb: readonly number[] | Float64Array): [lightness: number, a: number, b: number] {
  const [x, y, z] = transform(workingToXyz, [rgb[0], rgb[1], rgb[2]]).map((value, i) => root(value / white[i]))
  return [116 * y - 16, 500 * (x - y), 200 * (y - z)]
}
