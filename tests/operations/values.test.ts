import { expect, test } from 'vitest'
import { choice, numbers, slider, toggle } from '../../src/operations/controls.ts'
import { initialValues, readValues } from '../../src/operations/values.ts'

/** An operation whose first version kept its amount in percent under another name. */
const tint = {
  title: 'Tint',
  version: 2,
  controls: {
    amount: slider('Amount', '', 0, 1, 0.01, 0.5, { bounded: true }),
    inverted: toggle('Inverted', false),
    mode: choice('Mode', [{ value: 'soft', label: 'Soft' }], 'soft'),
    weights: numbers('Weights', [1, 0]),
  },
  migrate: ({ percent, ...others }: Record<string, number | boolean | string | readonly number[]>) => ({
    ...others,
    amount: (percent as number) / 100,
  }),
}

test('initial values are those of the controls', () => {
  expect(initialValues(tint)).toEqual({ amount: 0.5, inverted: false, mode: 'soft', weights: [1, 0] })
})

test('values of an earlier version are migrated, then clamped and completed', () => {
  expect(readValues(tint, { percent: 20, inverted: true }, 1)).toMatchObject({ amount: 0.2, inverted: true })
  expect(readValues(tint, { percent: 170 }, 1).amount).toBe(1)
  expect(readValues(tint, { amount: 0.7 }, 2).amount).toBe(0.7)
})

test.each([
  [{ amount: '0.7' }, '“Amount” of the step “Tint” must be a finite number.'],
  [{ inverted: 1 }, '“Inverted” of the step “Tint” must be true or false.'],
  [{ mode: 'hard' }, '“Mode” of the step “Tint” must be one of soft.'],
  [{ weights: [1] }, '“Weights” of the step “Tint” must hold 2 numbers, not 1.'],
  [{ weights: [1, NaN] }, '“Weights” of the step “Tint” must be a list of finite numbers.'],
])('%j is refused by name', (saved, sentence) => {
  expect(() => readValues(tint, saved)).toThrow(sentence)
})
