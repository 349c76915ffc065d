import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { monotoneCubic } from '../../src/math/monotone-cubic.ts'

// Table of radiochemical data "RPN 14", the worked example of Fritsch & Carlson 1980 (figures from memory).
const rpnX = [7.99, 8.09, 8.19, 8.7, 9.2, 10, 12, 15, 20]
const rpnY = [0, 2.76429e-5, 4.37498e-2, 0.169183, 0.469428, 0.94374, 0.998636, 0.999919, 0.999994]

const rising = fc
  .array(fc.tuple(fc.integer({ min: 1, max: 50 }), fc.integer({ min: 0, max: 50 })), { minLength: 2, maxLength: 9 })
  .map((steps) => {
    const along = (k: 0 | 1) => steps.map((_, i) => steps.slice(0, i + 1).reduce((sum, step) => sum + step[k], 0) / 50)
    return { xs: along(0), ys: along(1) }
  })

test('passes through every point and never falls between rising ones (the worked example of the paper)', () => {
  const curve = monotoneCubic(rpnX, rpnY)
  rpnX.forEach((x, i) => expect(curve.at(x)).toBeCloseTo(rpnY[i], 12))
  let before = -1
  for (let x = 7.99; x <= 20; x += 0.001) {
    expect(curve.at(x)).toBeGreaterThanOrEqual(before - 1e-15)
    before = curve.at(x)
  }
})

test('is monotone for any rising points (theorem of section 4 of the paper)', () => {
  fc.assert(
    fc.property(rising, ({ xs, ys }) => {
      const curve = monotoneCubic(xs, ys)
      const values = Array.from({ length: 301 }, (_, i) => curve.at(xs[0] + ((xs.at(-1)! - xs[0]) * i) / 300))
      values.slice(1).forEach((value, i) => expect(value).toBeGreaterThanOrEqual(values[i] - 1e-12))
      expect(curve.lastSlope).toBeGreaterThanOrEqual(0)
    }),
  )
})

test('a straight line stays straight, and a cubic with the tangents of the formula is hit (Hermite form by hand)', () => {
  const line = monotoneCubic([0, 0.3, 1], [0.1, 0.25, 0.6])
  for (const x of [0, 0.1, 0.5, 0.99]) expect(line.at(x)).toBeCloseTo(0.1 + 0.5 * x, 12)
  // Secants ½ and 3/2: tangents ½, 1, 3/2, all within the circle of radius 3; middle of the first piece by hand.
  expect(monotoneCubic([0, 1, 2], [0, 0.5, 2]).at(0.5)).toBeCloseTo(0.25 + (0.5 - 1) / 8, 12)
})

test('what is no curve is refused', () => {
  expect(() => monotoneCubic([0], [0])).toThrow('at least two points')
  expect(() => monotoneCubic([0, 0], [0, 1])).toThrow('from left to right')
})
