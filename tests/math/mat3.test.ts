import { expect, test } from 'vitest'
import { determinant, diagonal, invert, multiply, transform } from '../../src/math/mat3.ts'

/** The Hilbert matrix of order 3: determinant 1/2160 and an integer inverse (textbook values; OEIS A005249). */
const hilbert = [1, 1 / 2, 1 / 3, 1 / 2, 1 / 3, 1 / 4, 1 / 3, 1 / 4, 1 / 5]
const hilbertInverse = [9, -36, 30, -36, 192, -180, 30, -180, 180]

const expectClose = (actual: readonly number[], expected: readonly number[], within: number) =>
  actual.forEach((value, i) => expect(Math.abs(value - expected[i])).toBeLessThan(within))

test('the Hilbert matrix has its textbook determinant and inverse', () => {
  expect(determinant(hilbert) * 2160).toBeCloseTo(1, 10)
  expectClose(invert(hilbert), hilbertInverse, 1e-9)
})

test('a product applies its right factor first', () => {
  const quarterTurn = [0, -1, 0, 1, 0, 0, 0, 0, 1]
  const both = multiply(quarterTurn, diagonal([2, 3, 4]))
  expect(transform(both, [1, 0, 5])).toEqual([0, 2, 20])
})

test('a singular matrix is refused in words', () => {
  expect(() => invert([1, 2, 3, 2, 4, 6, 0, 0, 1])).toThrow(/no inverse/)
})
