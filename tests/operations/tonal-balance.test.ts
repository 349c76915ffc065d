import { expect, test } from 'vitest'
import { tonalBalance } from '../../src/operations/tonal-balance.ts'
import { applyOperation } from '../support/apply-operation.ts'

const grey = (level: number) => [level, level, level]

test('far below, between and far above the pivots a range alone acts, with gains of 2^amount (definition of a stop)', () => {
  const values = { shadowRed: 0.5, midtoneBlue: -0.4, highlightGreen: 0.6, shadowsEndEv: -7, highlightsBeginEv: 7 }
  const [r, g, b] = applyOperation(tonalBalance, grey(0.18 * 2 ** -20), values)
  expect(Math.log2(r / g)).toBeCloseTo(0.5, 4)
  expect(b).toBeCloseTo(g, 12)
  const middle = applyOperation(tonalBalance, grey(0.18), values)
  expect(Math.log2(middle[2] / middle[1])).toBeCloseTo(-0.4, 3)
  const bright = applyOperation(tonalBalance, grey(0.18 * 2 ** 20), values)
  expect(Math.log2(bright[1] / bright[0])).toBeCloseTo(0.6, 4)
})

test('at a pivot both neighbours weigh one half: the gain is the geometric mean (logistic function at 0)', () => {
  const values = { shadowRed: 0.8, midtoneRed: 0.2, shadowsEndEv: -1, highlightsBeginEv: 12 }
  const [r, g] = applyOperation(tonalBalance, grey(0.09), values)
  expect(Math.log2(r / g)).toBeCloseTo(0.5, 3)
})

test('the level stays, for greys and for colours without noise below 0', () => {
  const values = { shadowRed: 1, shadowBlue: -1, midtoneGreen: 0.7, highlightRed: -0.9, highlightBlue: 1 }
  for (const rgb of [grey(0.01), grey(0.4), grey(3), [0.6, 0.2, 0.05], [0, 0.02, 0.9]]) {
    const level = (channels: readonly number[]) => channels.reduce((sum, value) => sum + value, 0)
    expect(level(applyOperation(tonalBalance, rgb, values))).toBeCloseTo(level(rgb), 12)
  }
})

test('pivots in the wrong order act as in the right one', () => {
  const amounts = { shadowRed: 0.5, midtoneRed: -0.5, highlightRed: 0.3 }
  const right = applyOperation(tonalBalance, grey(0.2), { ...amounts, shadowsEndEv: -1, highlightsBeginEv: 2 })
  expect(applyOperation(tonalBalance, grey(0.2), { ...amounts, shadowsEndEv: 2, highlightsBeginEv: -1 })).toEqual(right)
})
