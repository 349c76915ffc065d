// What every operation owes, looped over the explicit list: a new one is held to this by standing in it.
import { existsSync } from 'node:fs'
import { describe, expect, test } from 'vitest'
import type { Control, ControlValue, Operation } from '../../src/operations/define.ts'
import { operationById, operations } from '../../src/operations/index.ts'
import { initialValues, readValues, type Values } from '../../src/operations/values.ts'
import { applyOperation, plainFacts } from '../support/apply-operation.ts'

const levels = [-1, -0.01, 0, 1e-6, 0.002, 0.18, 0.5, 0.97, 1, 3, 16]
const ramp = levels.flatMap((r) => levels.flatMap((g) => levels.map((b) => [r, g, b])))
const broken = [NaN, Infinity, -Infinity].flatMap((x) => [
  [x, 0.2, 0.3],
  [0.1, x, 0.3],
  [0.1, 0.2, x],
  [x, x, x],
])

const kebab = (id: string) => id.replaceAll(/[A-Z]/g, (letter) => `-${letter.toLowerCase()}`)
const stems = (id: string) => [
  `src/operations/${kebab(id)}.ts`,
  `shaders/operations/${kebab(id)}.glsl`,
  `tests/operations/${kebab(id)}.test.ts`,
]

/** Values at one end of every slider, with every toggle over and the last choice. */
function extreme(operation: Operation, end: 'min' | 'max'): Values {
  const value = (control: Control): ControlValue => {
    if (control.kind === 'slider') return control[end]
    if (control.kind === 'toggle') return end === 'max'
    return control.kind === 'choice' && end === 'max' ? control.options.at(-1)!.value : control.initial
  }
  return Object.fromEntries(Object.entries(operation.controls).map(([name, control]) => [name, value(control)]))
}

/** Kind and length of every coefficient; throws for one that is not finite. */
function shapesOf(operation: Operation, values: Values): Record<string, string> {
  const entries = Object.entries(operation.derive(values, plainFacts)).map(([name, value]) => {
    const flat = [value].flat()
    if (!flat.every((entry) => typeof entry === 'boolean' || Number.isFinite(entry)))
      throw new Error(`${name}: ${value}`)
    return [name, `${typeof flat[0]} × ${flat.length}`]
  })
  return Object.fromEntries(entries)
}

test('ids are unique', () => {
  expect(new Set(operations.map(({ id }) => id)).size).toBe(operations.length)
})

test('an unknown operation is refused in words', () => {
  expect(() => operationById('sparkle')).toThrow(/No operation is called “sparkle”.*neutral/)
})

describe.each(operations.map((operation) => [operation.id, operation] as const))('%s', (id, operation) => {
  const everyValues = [initialValues(operation), extreme(operation, 'min'), extreme(operation, 'max')]

  test('stands in three files of one stem, and its shader defines the function of its id', () => {
    expect(stems(id).filter((path) => !existsSync(new URL(`../../${path}`, import.meta.url)))).toEqual([])
    const coefficients = `${id[0].toUpperCase()}${id.slice(1)}Coefficients`
    expect(operation.glsl).toMatch(new RegExp(`vec3 ${id}\\(vec3 rgb, ${coefficients} k, PixelFacts pixel[,)]`))
  })

  test('initial values change nothing, or it says why', () => {
    const worst = Math.max(
      ...ramp.map((rgb) =>
        Math.max(...applyOperation(operation, rgb).map((value, i) => Math.abs(value - rgb[i]) / Math.max(1, ...rgb))),
      ),
    )
    expect(worst < 1e-6 || (operation.notIdentityBecause ?? '').length > 10).toBe(true)
    expect(worst < 1e-6 && operation.notIdentityBecause !== undefined).toBe(false)
  })

  test('gives finite values on a ramp over −1…16, clipped or not, at the ends of all controls', () => {
    for (const values of everyValues) {
      for (const rgb of ramp) {
        for (const peak of [0, 0.95, 1]) {
          expect(applyOperation(operation, rgb, values, { peak }).every(Number.isFinite)).toBe(true)
        }
      }
    }
  })

  test('NaN and ±infinity may pass through, but the output draws every such pixel within 0…1', () => {
    for (const rgb of broken) {
      for (const value of applyOperation(operationById('outputTransform'), applyOperation(operation, rgb))) {
        expect(value).toBeGreaterThanOrEqual(0)
        expect(value).toBeLessThanOrEqual(1)
      }
    }
  })

  test('values survive JSON', () => {
    for (const values of everyValues) {
      expect(readValues(operation, JSON.parse(JSON.stringify(values)))).toEqual(values)
    }
  })

  test('coefficients are finite and keep their shapes when values change', () => {
    const [initial, ...others] = everyValues.map((values) => shapesOf(operation, values))
    for (const other of others) expect(other).toEqual(initial)
  })

  test('bounded sliders are clamped, others go as far as typed; what is no number is refused by name', () => {
    for (const [name, control] of Object.entries(operation.controls)) {
      if (control.kind !== 'slider') continue
      const beyond = control.max + 5
      expect(readValues(operation, { [name]: beyond })[name]).toBe(control.bounded ? control.max : beyond)
      for (const unusable of [NaN, Infinity, 'wide', true]) {
        expect(() => readValues(operation, { [name]: unusable })).toThrow(control.label)
      }
    }
  })

  test('values without a name known here are dropped, missing ones are initial, a newer version is refused', () => {
    expect(readValues(operation, { fromElsewhere: 3 })).toEqual(initialValues(operation))
    expect(() => readValues(operation, {}, operation.version + 1)).toThrow(/newer version/)
  })
})
