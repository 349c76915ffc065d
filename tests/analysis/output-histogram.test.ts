import { expect, test } from 'vitest'
import { outputHistogram } from '../../src/analysis/output-histogram.ts'

test('shares of every part of the range and of both ends are those counted by hand', () => {
  const codes = Uint8ClampedArray.of(0, 128, 255, 255, 3, 131, 255, 255, 4, 128, 251, 255, 255, 0, 252, 255)
  const [red, green, blue] = outputHistogram(codes)
  expect([red.bins[0], red.bins[1], red.bins[63]]).toEqual([0.5, 0.25, 0.25])
  expect([red.atBlack, red.atWhite]).toEqual([0.25, 0.25])
  expect(green.bins[32]).toBe(0.75)
  expect([blue.bins[62], blue.bins[63], blue.atWhite]).toEqual([0.25, 0.75, 0.5])
})
