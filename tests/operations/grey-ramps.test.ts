// What every tone step owes a ramp of greys at any setting: brighter never becomes darker, and grey stays grey wherever the
// step is not asked for colour. Properties of our own; monotone tone curves and neutral ends are common practice.
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { blackAndWhite } from '../../src/operations/black-and-white.ts'
import type { Control, Operation } from '../../src/operations/define.ts'
import { exposureContrast } from '../../src/operations/exposure-contrast.ts'
import { tonalBalance } from '../../src/operations/tonal-balance.ts'
import { toneCurve } from '../../src/operations/tone-curve.ts'
import { initialValues, type Values } from '../../src/operations/values.ts'
import { applyOperation } from '../support/apply-operation.ts'

/** Greys from far below black to two stops above white, a twentieth of a stop apart, after some below 0. */
const levels = [-0.05, -0.001, 0, ...Array.from({ length: 321 }, (_, i) => 2 ** (-14 + i / 20))]
const ramp = (operation: Operation, values: Values) =>
  levels.map((level) => applyOperation(operation, [level, level, level], values as never))

function settingOf(control: Control): fc.Arbitrary<unknown> {
  if (control.kind === 'slider') return fc.double({ min: control.min, max: control.max, noNaN: true })
  if (control.kind === 'toggle') return fc.boolean()
  if (control.kind === 'choice') return fc.constantFrom(...control.options.map(({ value }) => value))
  if (control.kind === 'numbers')
    return fc.array(fc.double({ min: -0.2, max: 1.2, noNaN: true }), { minLength: 0, maxLength: 14 })
  return fc.constant(control.initial)
}
const settings = ({ controls }: Operation) =>
  fc.record(Object.fromEntries(Object.entries(controls).map(([name, control]) => [name, settingOf(control)])))

const spread = (rgb: readonly number[]) => (Math.max(...rgb) - Math.min(...rgb)) / Math.max(1, ...rgb.map(Math.abs))
const rises = (values: readonly number[]) =>
  values.slice(1).every((value, i) => value >= values[i] - 1e-9 * Math.max(1, Math.abs(value)))
const brightness = ([r, g, b]: readonly number[]) => 0.2627 * r + 0.678 * g + 0.0593 * b

describe.each<[string, Operation]>([
  ['exposure and contrast', exposureContrast],
  ['tone curve', toneCurve],
  ['black and white without tones', blackAndWhite],
])('%s', (name, operation) => {
  const untoned: Values = name.includes('without') ? { shadowStrength: 0, highlightStrength: 0 } : {}
  test('keeps greys grey and in order at any setting', () => {
    fc.assert(
      fc.property(settings(operation), (values) => {
        const greys = ramp(operation, { ...(values as Values), ...untoned })
        expect(Math.max(...greys.map(spread))).toBeLessThan(1e-9)
        expect(rises(greys.map(([r]) => r))).toBe(true)
      }),
      { numRuns: 200 },
    )
  })
})

test('tonal balance: each channel of a grey ramp rises at any setting, and equal amounts leave it grey', () => {
  fc.assert(
    fc.property(settings(tonalBalance), (values) => {
      const colours = ramp(tonalBalance, values as Values)
      for (let c = 0; c < 3; c++) expect(rises(colours.map((rgb) => rgb[c]))).toBe(true)
      const one = values as Record<string, number>
      const even = Object.fromEntries(
        Object.keys(initialValues(tonalBalance)).map((name) => [
          name,
          name.replace(/Red$|Blue$/, 'Green') in one ? one[name.replace(/Red$|Blue$/, 'Green')] : one[name],
        ]),
      )
      expect(Math.max(...ramp(tonalBalance, even).map(spread))).toBeLessThan(1e-12)
    }),
    { numRuns: 300 },
  )
})

test('black and white with tones: brightness rises at any setting (luminance weights of ITU-R BT.2020)', () => {
  fc.assert(
    fc.property(settings(blackAndWhite), (values) => {
      const inside = levels.filter((level) => level >= 0 && level <= 1)
      const toned = inside.map((level) => applyOperation(blackAndWhite, [level, level, level], values as never))
      expect(rises(toned.map(brightness))).toBe(true)
    }),
    { numRuns: 200 },
  )
})
