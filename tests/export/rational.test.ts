// Fractions as cameras write exposures; values of the customary series of shutter speeds and apertures (from memory).
import { expect, it } from 'vitest'
import { toRational } from '../../src/export/rational.ts'

it.each([
  [1 / 8000, 1, 8000],
  [1 / 250, 1, 250],
  [1 / 3, 1, 3],
  [0.8, 4, 5],
  [30, 30, 1],
  [5.6, 28, 5],
  [0, 0, 1],
])('%d from 64-bit and 32-bit floats', (value, numerator, denominator) => {
  expect(toRational(value)).toEqual([numerator, denominator])
  expect(toRational(Math.fround(value))).toEqual([numerator, denominator])
})

it('stays within 1e-5 of any number an unsigned fraction can hold', () => {
  for (let exponent = -30; exponent < 32; exponent += 0.37) {
    const value = 2 ** exponent
    const [numerator, denominator] = toRational(value)
    expect(Math.abs(numerator / denominator / value - 1)).toBeLessThanOrEqual(1e-5)
    expect(Math.max(numerator, denominator)).toBeLessThan(2 ** 32)
  }
  expect(() => toRational(-1)).toThrow(RangeError)
  expect(() => toRational(2 ** 32)).toThrow(RangeError)
})
