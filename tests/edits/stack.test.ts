import { expect, test } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { operationById } from '../../src/operations/index.ts'
import {
  addStep,
  isFree,
  isRemovable,
  mayAdd,
  moveStep,
  removeStep,
  setEnabled,
  setValues,
  usualIndex,
  withProbe,
} from '../../src/edits/stack.ts'
import { plainFacts } from '../support/apply-operation.ts'

const chain = defaultChain(plainFacts)
const ids = (steps: typeof chain) => steps.map(({ id }) => id)

test('a new free step stands before the output, or where asked between neutral and output', () => {
  expect(ids(addStep(chain, 'hueTurn')).indexOf('hueTurn-1')).toBe(3)
  expect(ids(addStep(chain, 'hueTurn', {}, 1)).indexOf('hueTurn-1')).toBe(1)
  expect(ids(addStep(chain, 'hueTurn', {}, -4)).indexOf('hueTurn-1')).toBe(1)
})

test('a step usually stands in the order in which colour flows, behind its like', () => {
  expect(usualIndex(chain, 'infraredSplit')).toBe(1)
  expect(usualIndex(chain, 'channelMix')).toBe(2)
  expect(usualIndex(chain, 'colourStrength')).toBe(2)
  expect(usualIndex(chain, 'exposureContrast')).toBe(3)
})

test('the same operation may stand twice, under ids of their own', () => {
  const twice = addStep(addStep(chain, 'hueTurn'), 'hueTurn')
  expect(ids(twice).slice(3, 5)).toEqual(['hueTurn-1', 'hueTurn-2'])
  expect(ids(addStep(removeStep(twice, 'hueTurn-1'), 'hueTurn'))).toContain('hueTurn-3')
})

test('neutral and output stand once, first and last', () => {
  expect(() => addStep(chain, 'neutral')).toThrow(/only one step “Neutral”/)
  expect(() => addStep(chain, 'outputTransform')).toThrow(/only one step “Output”/)
  expect(ids(addStep(removeStep(chain, 'neutral-1'), 'neutral'))[0]).toBe('neutral-1')
  expect(chain.filter(isFree).map(({ operation }) => operation)).toEqual(['channelMix', 'exposureContrast'])
})

test('a second light stands once, right behind the neutral, and can be removed but not moved', () => {
  const lit = addStep(chain, 'secondLight')
  expect(ids(lit).slice(0, 3)).toEqual(['neutral-1', 'secondLight-1', 'channelMix-1'])
  expect(() => addStep(lit, 'secondLight')).toThrow(/only one step “Second light”/)
  const operation = operationById('secondLight')
  expect([mayAdd(chain, operation), mayAdd(lit, operation)]).toEqual([true, false])
  expect(lit.filter(isRemovable).map(({ operation: id }) => id)).toContain('secondLight')
  expect(moveStep(lit, 'secondLight-1', 2)).toBe(lit)
  expect(ids(moveStep(lit, 'channelMix-1', 0))[2]).toBe('channelMix-1')
})

test('a step moves only between neutral and output; pinned ones do not move', () => {
  expect(ids(moveStep(chain, 'channelMix-1', 99))).toEqual([
    'neutral-1',
    'exposureContrast-1',
    'channelMix-1',
    'outputTransform-1',
  ])
  expect(ids(moveStep(chain, 'exposureContrast-1', 0))[1]).toBe('exposureContrast-1')
  expect(moveStep(chain, 'neutral-1', 2)).toBe(chain)
  expect(moveStep(chain, 'channelMix-1', 1)).toBe(chain)
})

test('the output can neither be removed nor switched off, and an unknown step is refused', () => {
  expect(() => removeStep(chain, 'outputTransform-1')).toThrow(/cannot be removed/)
  expect(() => setEnabled(chain, 'outputTransform-1', false)).toThrow(/cannot be switched off/)
  expect(() => setEnabled(chain, 'blur-1', false)).toThrow(/no step “blur-1”/)
})

test('changed values are completed and clamped; unusable ones leave the chain as it was', () => {
  const changed = setValues(chain, 'exposureContrast-1', { shoulder: 4 })
  expect(changed[2].values).toEqual({ ...chain[2].values, shoulder: 1 })
  expect(() => setValues(chain, 'exposureContrast-1', { exposureEv: NaN })).toThrow(/must be a finite number/)
  expect(() => setValues(chain, 'channelMix-1', { rows: [1, 0, 0] })).toThrow(/must hold 9 numbers, not 3/)
})

test('a probe puts its gains into the neutral, switched on, and leaves the rest alone', () => {
  const probe = { redStops: -2.5, blueStops: 3.25 }
  const probed = withProbe(setEnabled(chain, 'neutral-1', false), probe)
  expect(probed[0]).toEqual({ ...chain[0], values: { ...chain[0].values, ...probe } })
  expect(probed.slice(1)).toEqual(chain.slice(1))
  expect(withProbe(chain, null)).toBe(chain)
  expect(withProbe(removeStep(chain, 'neutral-1'), probe)[0].values).toMatchObject(probe)
})

test('a chain survives JSON', () => {
  expect(JSON.parse(JSON.stringify(chain))).toEqual(chain)
})
