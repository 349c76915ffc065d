import { expect, test } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { addStep, setEnabled, setValues } from '../../src/edits/stack.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { plainFacts } from '../support/apply-operation.ts'

const chain = defaultChain(plainFacts)

test('keeps the order of enabled steps and leaves the others out', () => {
  const muted = setEnabled(chain, 'channelMix-1', false)
  const ids = describe(muted, plainFacts).steps.map(({ stepId }) => stepId)
  expect(ids).toEqual(['neutral-1', 'exposureContrast-1', 'outputTransform-1'])
})

test('values leave the structure key alone, structure changes it', () => {
  const { structureKey } = describe(chain, plainFacts)
  const brighter = setValues(chain, 'exposureContrast-1', { exposureEv: 2, shoulder: 0 })
  expect(describe(brighter, plainFacts).structureKey).toBe(structureKey)
  expect(describe(chain, plainFacts, { space: 'romm' }).structureKey).toBe(structureKey)
  expect(describe(addStep(chain, 'hueTurn'), plainFacts).structureKey).not.toBe(structureKey)
})

test('the space of a screen or an export overrides the output step’s', () => {
  const exported = setValues(chain, 'outputTransform-1', { space: 'display-p3' })
  const overridden = describe(chain, plainFacts, { space: 'display-p3' })
  expect(overridden.steps.at(-1)!.coefficients).toEqual(describe(exported, plainFacts).steps.at(-1)!.coefficients)
})

test('the mosaic is equalised by the neutral, or by the reference neutral when it is off', () => {
  const picked = setValues(chain, 'neutral-1', { redStops: -2, blueStops: 3 })
  expect(describe(picked, plainFacts).mosaicGains).toEqual([0.25, 1, 8])
  const [red, green, blue] = describe(setEnabled(picked, 'neutral-1', false), plainFacts).mosaicGains
  expect([red * 3.42, green, blue * 0.54].map((level) => level.toFixed(9))).toEqual(Array(3).fill('1.000000000'))
})

test('a chain without its output is refused in words', () => {
  expect(() => describe(chain.slice(0, -1), plainFacts)).toThrow(/last step must be the output/)
})

test('a step that cannot be read is refused by name', () => {
  const spoilt = chain.with(0, { ...chain[0], values: { redStops: 'much' } })
  expect(() => describe(spoilt, plainFacts)).toThrow(/“Red to green” of the step “Neutral” must be a finite number/)
})
