// Packed filter words. The four Bayer words are those LibRaw documents for its `filters` field (from memory).
import { expect, it } from 'vitest'
import { cfaFromFilters, isBayer } from '../../src/sensor/cfa.ts'
import { bayer, sixBySix } from '../support/synthetic-sensor.ts'

it.each([
  { filters: 0x94949494, colours: [0, 1, 1, 2] },
  { filters: 0x16161616, colours: [2, 1, 1, 0] },
  { filters: 0x61616161, colours: [1, 0, 2, 1] },
  { filters: 0x49494949, colours: [1, 2, 0, 1] },
  { filters: 0xb4b4b4b4, colours: [0, 1, 1, 2] },
  { filters: 0xe1e1e1e1, colours: [1, 0, 2, 1] },
])('$filters is $colours', ({ filters, colours }) => {
  const cfa = cfaFromFilters(filters)
  expect(cfa).toEqual({ columns: 2, rows: 2, colours })
  expect(isBayer(cfa)).toBe(true)
})

it('an array that is no Bayer array is told apart', () => {
  expect(isBayer(bayer)).toBe(true)
  expect(isBayer(sixBySix)).toBe(false)
  expect(isBayer({ columns: 2, rows: 2, colours: [0, 1, 2, 1] })).toBe(false)
  // Rows of red, green, green, blue shifted every other pair repeat after four rows.
  expect(cfaFromFilters(0x94619461)).toMatchObject({ columns: 2, rows: 4 })
})
