// Blending by the definition of the geometric mean.
import { expect, test } from 'vitest'
import { blendGains } from '../../src/analysis/blend-gains.ts'

const one = { redStops: Math.log2(0.3), blueStops: Math.log2(1.8) }
const other = { redStops: Math.log2(0.6), blueStops: Math.log2(1.2) }

test('ends are exact', () => {
  expect(
    blendGains([
      { ...one, weight: 1 },
      { ...other, weight: 0 },
    ]),
  ).toEqual(one)
  expect(
    blendGains([
      { ...one, weight: 0 },
      { ...other, weight: 3 },
    ]),
  ).toEqual(other)
})

test('the midpoint is the geometric mean of the gains', () => {
  const { redStops, blueStops } = blendGains([
    { ...one, weight: 2 },
    { ...other, weight: 2 },
  ])
  expect(2 ** redStops).toBeCloseTo(Math.sqrt(0.3 * 0.6), 12)
  expect(2 ** blueStops).toBeCloseTo(Math.sqrt(1.8 * 1.2), 12)
})

test('weights without sense are refused', () => {
  expect(() => blendGains([])).toThrow(RangeError)
  expect(() => blendGains([{ ...one, weight: 0 }])).toThrow('weights')
  expect(() =>
    blendGains([
      { ...one, weight: 2 },
      { ...other, weight: -1 },
    ]),
  ).toThrow('not negative')
})
