import Color from 'colorjs.io'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { ciede2000 } from '../../src/colour/ciede2000.ts'
import { openJson } from '../support/open-data.ts'

type Lab = [number, number, number]
const pairs = openJson<{ lab1: Lab; lab2: Lab; dE00: number }[]>('checks/ciede2000_sharma2005.json')

test.skipIf(!pairs)('the 34 pairs of Sharma, Wu & Dalal 2005, table 1 (skipped without open data)', () => {
  expect(pairs).toHaveLength(34)
  for (const { lab1, lab2, dE00 } of pairs!) {
    expect(Math.abs(ciede2000(lab1, lab2) - dE00)).toBeLessThan(5.1e-5)
    expect(Math.abs(ciede2000(lab2, lab1) - dE00)).toBeLessThan(5.1e-5)
  }
})

test('agrees with colorjs.io all over CIELAB', () => {
  const lab = fc.tuple(
    fc.integer({ min: 0, max: 100 }),
    fc.integer({ min: -120, max: 120 }),
    fc.integer({ min: -120, max: 120 }),
  )
  fc.assert(
    fc.property(lab, lab, (lab1, lab2) => {
      const expected = new Color('lab', lab1).deltaE(new Color('lab', lab2), '2000')
      expect(Math.abs(ciede2000(lab1, lab2) - expected)).toBeLessThan(1e-6)
    }),
  )
})
