// Gains as lights, against the definition of the camera matrix (Adobe DNG Specification 1.7, chapter 6: camera = matrix · XYZ) and
// against the D65 and illuminant A chromaticities of CIE 15:2004 (from memory).
import { expect, test } from 'vitest'
import { chromaticityOfGains, gainsOfChromaticity } from '../../src/colour/camera-white.ts'
import { diagonal, invert, multiply, transform } from '../../src/math/mat3.ts'

/** XYZ to camera of a made-up camera, and what it sees of D65. */
const xyzToCamera = [1.4762, -0.5132, -0.1769, -0.593, 1.3853, 0.1638, -0.0521, 0.0894, 0.5497]
const daylight = transform(xyzToCamera, [0.3127 / 0.329, 1, 0.3583 / 0.329])
const camera = {
  cameraToXyz: multiply(invert(xyzToCamera), diagonal(daylight.map((channel) => channel / daylight[1]))),
  daylightNeutral: [Math.log2(daylight[0] / daylight[1]), Math.log2(daylight[2] / daylight[1])] as const,
}

test.each([
  [0.3127, 0.329],
  [0.44758, 0.40745],
])('a grey in the light (%f, %f) asks for these gains, and they name that light', (x, y) => {
  const [red, green, blue] = transform(xyzToCamera, [x, y, 1 - x - y])
  const gains = { redStops: Math.log2(green / red), blueStops: Math.log2(green / blue) }
  const found = gainsOfChromaticity(camera, [x, y])!
  expect(found.redStops).toBeCloseTo(gains.redStops, 10)
  expect(found.blueStops).toBeCloseTo(gains.blueStops, 10)
  const [backX, backY] = chromaticityOfGains(camera, gains)!
  expect(backX).toBeCloseTo(x, 10)
  expect(backY).toBeCloseTo(y, 10)
})

test('ratios that no light has name none', () => {
  expect(chromaticityOfGains(camera, { redStops: -1.5, blueStops: 8 })).toBeNull()
  expect(gainsOfChromaticity(camera, [0.05, 0.9])).toBeNull()
})
