// A made-up camera for visible light: its matrix as the DNG specification defines it, and what balances it in daylight.
import { diagonal, invert, multiply, transform } from '../../src/math/mat3.ts'

/** XYZ to camera. */
export const xyzToCamera = [1.4762, -0.5132, -0.1769, -0.593, 1.3853, 0.1638, -0.0521, 0.0894, 0.5497]

/** What it sees of D65. */
const daylight = transform(xyzToCamera, [0.3127 / 0.329, 1, 0.3583 / 0.329])

export const madeUpCamera = {
  cameraToXyz: multiply(invert(xyzToCamera), diagonal(daylight.map((channel) => channel / daylight[1]))),
  daylightNeutral: [Math.log2(daylight[0] / daylight[1]), Math.log2(daylight[2] / daylight[1])] as const,
}
