import { expect, test } from 'vitest'
import {
  CYCLIC_MIX,
  IDENTITY_MIX,
  isNearSingular,
  partialExchange,
  RED_BLUE_EXCHANGE,
  rowSums,
} from '../../src/colour/mix-matrices.ts'
import { determinant, transform } from '../../src/math/mat3.ts'
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
