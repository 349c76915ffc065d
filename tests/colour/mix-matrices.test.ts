import { expect, test } from 'vitest'
import {
  amountOfExchange,
  CYCLIC_MIX,
  CYCLIC_MIX_BACK,
  IDENTITY_MIX,
  isNearSingular,
  partialExchange,
  RED_BLUE_EXCHANGE,
  rowSums,
  withWeight,
} from '../../src/colour/mix-matrices.ts'
import { determinant, multiply, transform } from '../../src/math/mat3.ts'
import { openJson } from '../support/open-data.ts'

const vectors = openJson<{ rot120: number[][]; partial_swap_det: Record<string, number> }>(
  'checks/mapping_test_vectors.json',
)

test('the exchange puts red in the place of blue', () => {
  expect(transform(RED_BLUE_EXCHANGE, [1, 0.5, 0.25])).toEqual([0.25, 0.5, 1])
})

test.skipIf(!vectors)('the cyclic mix is the turn by 120° about grey (skipped without open data)', () => {
  expect(CYCLIC_MIX).toEqual(vectors!.rot120.flat().map((weight) => weight + 0))
})

test.skipIf(!vectors)('determinants along the partial exchange (skipped without open data)', () => {
  for (const [amount, expected] of Object.entries(vectors!.partial_swap_det)) {
    expect(determinant(partialExchange(Number(amount)))).toBeCloseTo(expected, 12)
  }
})

test('every mix made here keeps greys: rows sum to 1', () => {
  for (const mix of [IDENTITY_MIX, RED_BLUE_EXCHANGE, CYCLIC_MIX, partialExchange(0.3)]) {
    expect(rowSums(mix)).toEqual([1, 1, 1])
  }
})

test('only mixes about half-way exchanged are pointed out as near-singular: |1 − 2t| < .05', () => {
  expect([0, 0.4, 0.47, 0.5, 0.52, 0.53, 1].map((amount) => isNearSingular(partialExchange(amount)))).toEqual([
    false,
    false,
    false,
    true,
    true,
    false,
    false,
  ])
})

test('the two cyclic mixes undo each other', () => {
  expect(multiply(CYCLIC_MIX, CYCLIC_MIX_BACK)).toEqual(IDENTITY_MIX)
})

test('a partial exchange is known by its amount, another mix is not', () => {
  expect(amountOfExchange(partialExchange(0.35))).toBeCloseTo(0.35, 12)
  expect(amountOfExchange(IDENTITY_MIX)).toBe(0)
  expect(amountOfExchange(CYCLIC_MIX)).toBeNull()
})

test('a weight changes with its row’s sum held: the others keep their proportion, or give equal parts', () => {
  const near = (mix: readonly number[], row: number[]) =>
    row.forEach((weight, i) => expect(mix[i]).toBeCloseTo(weight, 12))
  near(withWeight([0.4, 0.4, 0.2, 0, 1, 0, 0, 0, 1], 0, 0.7), [0.7, 0.2, 0.1])
  near(withWeight(IDENTITY_MIX, 0, 0.5), [0.5, 0.25, 0.25])
  near(withWeight([0.4, 0.4, 0.2, 0, 1, 0, 0, 0, 1], 0, 1.6), [1.6, -0.2, -0.4])
  expect(withWeight(IDENTITY_MIX, 4, 0.5).slice(0, 3)).toEqual([1, 0, 0])
})
