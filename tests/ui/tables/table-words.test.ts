// What is said of a colour table: its shape, what its file says of itself, and what its file leaves open.
import { expect, test } from 'vitest'
import { tableWords } from '../../../src/ui/tables/table-words.ts'
import type { KnownTable } from '../../../src/workbench/session.ts'

const known = (remarks: readonly string[], takes: 'srgb' | 'acescct' = 'srgb'): KnownTable => ({
  id: 'a',
  name: 'Leaves',
  kind: '3d',
  size: 17,
  facts: { takes, gives: takes, remarks, sampled: null },
})
const open = 'Its file does not say which numbers it takes and gives: choose what it was made for.'

test('a file that declares its encoding is quoted without it', () => {
  const words = tableWords(known(['Made at noon', 'Takes and gives sRGB as encoded', 'Rimeleaf encoding: srgb']))
  expect(words).toEqual(['A cube of 17 points a side.', '“Made at noon”'])
})

test('what another file takes and gives comes first', () => {
  const words = tableWords(known(['Made at noon', 'Takes: linear light', 'Gives: display numbers'], 'acescct'))
  expect(words).toEqual(['A cube of 17 points a side.', '“Takes: linear light”', '“Gives: display numbers”'])
})

test('a file that says nothing leaves the choice to the person', () => {
  expect(tableWords(known(['Made at noon']))).toEqual(['A cube of 17 points a side.', '“Made at noon”', open])
  expect(tableWords(known([], 'acescct'))).toEqual(['A cube of 17 points a side.'])
})

test('a table from an edit file has a shape only', () => {
  const { facts: _facts, ...table } = known([])
  expect(tableWords({ ...table, kind: '1d', size: 1024 })).toEqual(['A line of 1024 points for each channel.'])
})
