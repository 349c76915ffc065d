// Where tonal balance is drawn, held to what the operation does: with the level's share taken out, a grey of each level comes out of the
// step with channels as far apart as the lines say.
import { expect, it } from 'vitest'

import { tonalBalance } from '../../src/operations/tonal-balance.ts'
import { amountAt, levelToAxis, tonalPlaces, travelPlace } from '../../src/ui/tones/tonal-axis.ts'
import { applyOperation } from '../support/apply-operation.ts'

const borders = { shadowsEndEv: -1.5, highlightsBeginEv: 2 }
const [red, blue] = [
  [0.8, -0.2, 0.4],
  [-0.5, 0.6, -0.9],
]

it('lines lie as far apart as the channels of a grey do behind the step', () => {
  const values = {
    ...borders,
    shadowRed: red[0],
    midtoneRed: red[1],
    highlightRed: red[2],
    shadowBlue: blue[0],
    midtoneBlue: blue[1],
    highlightBlue: blue[2],
  }
  for (const level of [0.003, 0.02, 0.06, 0.18, 0.5, 1.2]) {
    const [r, g, b] = applyOperation(tonalBalance, [level, level, level], values)
    const at = levelToAxis(level)
    expect(amountAt(at, red, borders)).toBeCloseTo(Math.log2(r / g), 6)
    expect(amountAt(at, blue, borders)).toBeCloseTo(Math.log2(b / g), 6)
  }
})

it('points and borders lie in order inside the axis, whichever border is the higher', () => {
  for (const swapped of [borders, { shadowsEndEv: 2, highlightsBeginEv: -1.5 }]) {
    const places = tonalPlaces(swapped)
    const inOrder = [places.middles[0], places.borders[0], places.middles[1], places.borders[1], places.middles[2]]
    expect(inOrder).toEqual([...inOrder].sort((a, b) => a - b))
    expect(Math.min(...inOrder)).toBeGreaterThan(0)
    expect(Math.max(...inOrder)).toBeLessThan(1)
    expect(places).toEqual(tonalPlaces(borders))
  }
})

it('the ends of a travel lie inside the plot, 0 in its middle', () => {
  expect(travelPlace(0, 1)).toBe(0.5)
  expect(travelPlace(1, 1)).toBeGreaterThan(0.05)
  expect(travelPlace(-1, 1)).toBeLessThan(0.95)
})
