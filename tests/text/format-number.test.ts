// Numbers as typed and shown. The expected texts are ours; reading back what is written is checked for every number.
import fc from 'fast-check'
import { expect, test } from 'vitest'

import { decimalsOf, formatNumber, formatTimeLeft, parseNumber } from '../../src/text/format-number.ts'

test('what is written can be read back, whatever the sign and the decimals', () => {
  fc.assert(
    fc.property(
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
      fc.integer({ min: 0, max: 4 }),
      fc.boolean(),
      (value, decimals, signed) => {
        const read = parseNumber(formatNumber(value, decimals, signed))!
        expect(Math.abs(read - value)).toBeLessThanOrEqual(0.5 * 10 ** -decimals + 1e-9)
      },
    ),
  )
})

test('either decimal mark and either minus are read; anything else is not a number', () => {
  expect(parseNumber(' −1,5 ')).toBe(-1.5)
  expect(parseNumber('+.5')).toBe(0.5)
  for (const text of ['', '1e5', '1.2.3', 'NaN', 'Infinity', '--1', '5 stop']) expect(parseNumber(text)).toBeNull()
})

test('zero carries no sign, and no rounding makes a negative zero', () => {
  expect(formatNumber(-0.001, 2, true)).toBe('0.00')
  expect(formatNumber(0.25, 2, true)).toBe('+0.25')
})

test('a step has as many decimals as it needs', () => {
  expect([1, 0.5, 0.05, 0.001].map(decimalsOf)).toEqual([0, 1, 2, 3])
})

test('time left is coarse and never zero', () => {
  expect([0, 4.4, 42, 130].map(formatTimeLeft)).toEqual([
    'about 1 s left',
    'about 4 s left',
    'about 40 s left',
    'about 2 min left',
  ])
})
