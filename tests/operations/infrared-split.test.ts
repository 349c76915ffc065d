import { expect, test } from 'vitest'
import { invert, multiply, transform } from '../../src/math/mat3.ts'
import { infraredSplit } from '../../src/operations/infrared-split.ts'
import { initialValues } from '../../src/operations/values.ts'
import { plainFacts } from '../support/apply-operation.ts'

const exchange = [0, 0, 1, 0, 1, 0, 1, 0, 0]
const gains = (red: number, blue: number) => [red, 0, 0, 0, 1, 0, 0, 0, blue]
const opening = gains(1 / 3.42, 1 / 0.54)
const splitOf = (values: object, toHere: readonly number[]) =>
  infraredSplit.derive({ ...initialValues(infraredSplit), ...values }, plainFacts, toHere).split
const shares = { redPercent: 24, greenPercent: 60 }

test('in sensor channels it is R − kR·B and G − kG·B, brought back to the level of the neutral (worked by hand)', () => {
  // kR = .24 · 3.42 / .54, kG = .60 / .54 are what shares of the opening neutral (3.42, 1, .54) mean per unit of blue.
  const sensor = [0.5, 0.2, 0.11]
  const visible = [0.5 - ((0.24 * 3.42) / 0.54) * 0.11, 0.2 - (0.6 / 0.54) * 0.11]
  const expected = [visible[0] / 3.42 / 0.76, visible[1] / 0.4, 0.11 / 0.54]
  const balanced = transform(opening, sensor)
  transform(splitOf(shares, opening), balanced).forEach((value, i) => expect(value).toBeCloseTo(expected[i], 12))
  const film = transform(splitOf({ ...shares, route: 'film' }, opening), balanced)
  expect(film[0]).toBeCloseTo(expected[2], 12)
  expect(film[1]).toBeCloseTo(expected[0], 12)
  expect(film[2]).toBeCloseTo(expected[1], 12)
})

test('another neutral changes the light that is taken off by nothing but its gains', () => {
  const sensor = [0.5, 0.2, 0.11]
  const part = (toHere: readonly number[]) => {
    const [red, green] = transform(splitOf(shares, toHere), transform(toHere, sensor))
    const [redOfRed, greenOfGreen] = transform(splitOf(shares, toHere), transform(toHere, [1, 0, 0])).slice(0, 2)
    return [red / redOfRed, green / (greenOfGreen || splitOf(shares, toHere)[4])]
  }
  const [red, green] = part(opening)
  const [otherRed, otherGreen] = part(gains(0.5, 1.44))
  expect(otherRed).toBeCloseTo(red, 12)
  expect(otherGreen).toBeCloseTo(green, 12)
})

test('the neutral stays neutral, and a mix before it only changes the order of the channels', () => {
  for (const toHere of [opening, gains(0.5, 1.44), multiply(exchange, opening)]) {
    for (const route of ['in-place', 'film']) {
      const split = splitOf({ ...shares, route }, toHere)
      transform(split, [1, 1, 1]).forEach((value) => expect(value).toBeCloseTo(1, 12))
    }
  }
  const plain = splitOf(shares, opening)
  const after = splitOf(shares, multiply(exchange, opening))
  multiply(exchange, multiply(plain, invert(exchange))).forEach((weight, i) => expect(after[i]).toBeCloseTo(weight, 12))
})
