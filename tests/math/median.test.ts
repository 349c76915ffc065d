// Held to the platform's own sort (ECMAScript 2025, %TypedArray%.prototype.sort).
import fc from 'fast-check'
import { expect, test } from 'vitest'

import { medianInPlace } from '../../src/math/median.ts'

test('finds what sorting puts in the middle, and keeps all numbers', () => {
  const numbers = fc.oneof(
    fc.float64Array({ minLength: 1, maxLength: 200, noNaN: true }),
    fc.array(fc.integer({ min: -3, max: 3 }), { minLength: 1, maxLength: 200 }).map((few) => Float64Array.from(few)),
  )
  fc.assert(
    fc.property(numbers, (values) => {
      const sorted = values.toSorted()
      const given = values.slice()
      expect(medianInPlace(given) === sorted[values.length >> 1]).toBe(true)
      expect(given.toSorted()).toEqual(sorted)
    }),
  )
})

test('there is none of nothing', () => {
  expect(medianInPlace(new Float64Array())).toBeNaN()
})
