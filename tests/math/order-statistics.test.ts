// Held to the platform's own sort (ECMAScript 2025, %TypedArray%.prototype.sort).
import fc from 'fast-check'
import { expect, test } from 'vitest'

import { medianInPlace, quantileInPlace } from '../../src/math/order-statistics.ts'

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

test('finds what sorting puts at a share of the way', () => {
  const numbers = fc.float32Array({ minLength: 1, maxLength: 200, noNaN: true })
  fc.assert(
    fc.property(numbers, fc.double({ min: 0, max: 1, noNaN: true }), (values, share) => {
      const sorted = values.toSorted()
      expect(quantileInPlace(values.slice(), share) === sorted[Math.round(share * (values.length - 1))]).toBe(true)
    }),
  )
})

test('there is none of nothing', () => {
  expect(medianInPlace(new Float64Array())).toBeNaN()
  expect(quantileInPlace(new Float32Array(), 0.5)).toBeNaN()
})
