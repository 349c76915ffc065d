// What a mask may never do: a step that acts everywhere with a mask is the step without one, and one that acts nowhere is none.
import { expect, test } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { setMask } from '../../src/edits/stack.ts'
import { makePart, type StepMask } from '../../src/operations/masks/mask.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { plainFacts } from '../support/apply-operation.ts'

const region = { x: 0, y: 0, width: 9, height: 4, frameWidth: 9, frameHeight: 4 }
const rgba = Float32Array.from({ length: 9 * 4 * 4 }, (_, i) => ((i * 37) % 101) / 110)
const chain = defaultChain(plainFacts)
const render = (of: typeof chain) => renderOnCpu(describe(of, plainFacts), rgba, region)
const everywhere: StepMask = { parts: [makePart('level', { fromEv: -40, toEv: 40 })], inverted: false, strength: 1 }
const ids = ['channelMix-1', 'exposureContrast-1']

test('weight 1 everywhere is no mask', () => {
  for (const id of ids) expect(render(setMask(chain, id, everywhere))).toEqual(render(chain))
})

test('weight 0 everywhere is no step', () => {
  for (const id of ids) {
    const without = chain.filter((step) => step.id !== id)
    expect(render(setMask(chain, id, { ...everywhere, inverted: true }))).toEqual(render(without))
  }
})

test('a mask stays with its step, is taken off with null, and is refused where a step acts everywhere', () => {
  const masked = setMask(chain, 'channelMix-1', everywhere)
  expect(masked[1].mask?.parts).toHaveLength(1)
  expect(setMask(masked, 'channelMix-1', null)).toEqual(chain)
  expect(() => setMask(chain, 'neutral-1', everywhere)).toThrow(/acts everywhere/)
})
