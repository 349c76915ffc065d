import { expect, test } from 'vitest'
import { RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { hasMapping, mappingOf, withMapping } from '../../src/edits/colour-map.ts'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { ownMaps } from '../../src/edits/own-maps.ts'
import { addStep, setEnabled } from '../../src/edits/stack.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { plainFacts } from '../support/apply-operation.ts'

const chain = defaultChain(plainFacts)
const operations = (steps: typeof chain) => steps.map(({ operation }) => operation)

test('the mapping of a chain is its mapping steps, in order, without ids', () => {
  const mixed = addStep(addStep(chain, 'hueTurn', { angleDeg: 30 }, 2), 'tonalBalance', {}, 2)
  expect(mappingOf(mixed).map(({ operation }) => operation)).toEqual(['channelMix', 'hueTurn'])
  expect(JSON.parse(JSON.stringify(mappingOf(mixed)))).toEqual(mappingOf(mixed))
  expect(mappingOf(mixed)[0].values.rows).toEqual(RED_BLUE_EXCHANGE)
})

test('a map takes the place of the mapping; neutral, tone and output stay as they are', () => {
  const map = mappingOf(addStep(addStep(chain, 'infraredSplit', {}, 1), 'hueBands', {}, 3))
  const before = addStep(addStep(chain, 'colourStrength', { strengthStops: 1 }), 'tonalBalance', {}, 2)
  const after = withMapping(before, map)
  expect(operations(after)).toEqual([
    'neutral',
    'infraredSplit',
    'channelMix',
    'hueBands',
    'tonalBalance',
    'exposureContrast',
    'outputTransform',
  ])
  const kept = (steps: typeof chain) => steps.filter(({ id }) => /^(neutral|tonalBalance|exposure|output)/.test(id))
  expect(kept(after)).toEqual(kept(before))
  expect(new Set(after.map(({ id }) => id)).size).toBe(after.length)
})

test('a step that was switched off comes back switched off', () => {
  const map = mappingOf(setEnabled(chain, 'channelMix-1', false))
  expect(withMapping(chain, map).find(({ operation }) => operation === 'channelMix')!.enabled).toBe(false)
})

test('a mapping step with a mask is work on one frame: it goes into no map and stays where it is', () => {
  const mask = { parts: [], inverted: false, strength: 1 }
  const turned = addStep(chain, 'hueTurn', { angleDeg: 90 })
  const masked = turned.map((step) => (step.operation === 'hueTurn' ? { ...step, mask } : step))
  expect(mappingOf(masked).map(({ operation }) => operation)).toEqual(['channelMix'])
  expect(withMapping(masked, []).find(({ operation }) => operation === 'hueTurn')?.mask).toBe(mask)
})

test('a chain knows its own map, and no other, whatever stood there before', () => {
  for (const map of ownMaps) {
    const mapped = withMapping(chain, map.steps)
    expect(hasMapping(mapped, map.steps)).toBe(true)
    for (const other of ownMaps) {
      expect(hasMapping(mapped, other.steps)).toBe(other === map)
      expect(withMapping(withMapping(chain, other.steps), map.steps).map(({ values }) => values)).toEqual(
        mapped.map(({ values }) => values),
      )
    }
  }
})

test('the maps that come along cover the usual filters, each told apart by name, and all can be drawn', () => {
  const filters = new Set(ownMaps.map(({ filterNm }) => filterNm))
  expect([550, 590, 630, 665, 695, 720, 780, null].filter((filterNm) => !filters.has(filterNm))).toEqual([])
  expect(new Set(ownMaps.map(({ name }) => name)).size).toBe(ownMaps.length)
  for (const map of ownMaps) {
    expect(map.words).toMatch(/^\S.*\.$/)
    expect(() => describe(withMapping(chain, map.steps), plainFacts)).not.toThrow()
  }
})
