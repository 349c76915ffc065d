// Gains as lights, against the definition of the camera matrix (Adobe DNG Specification 1.7, chapter 6: camera = matrix · XYZ) and
// against the D65 and illuminant A chromaticities of CIE 15:2004 (from memory).
import { expect, test } from 'vitest'
import { chromaticityOfGains, gainsOfChromaticity } from '../../src/colour/camera-white.ts'
import { transform } from '../../src/math/mat3.ts'
import { madeUpCamera as camera, xyzToCamera } from '../support/made-up-camera.ts'

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
