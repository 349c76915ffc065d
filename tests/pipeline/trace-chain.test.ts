import { expect, test } from 'vitest'
import { addStep } from '../../src/edits/stack.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { traceChain } from '../../src/pipeline/trace-chain.ts'
import { plainFacts } from '../support/apply-operation.ts'

const whole = ['neutral', 'channelMix', 'hueTurn', 'outputTransform'].reduce(
  (chain, id) => addStep(chain, id, id === 'hueTurn' ? { angleDeg: 70 } : id === 'neutral' ? { redStops: -1.2 } : {}),
  [] as ReturnType<typeof addStep>,
)
const camera = [0.5, 0.2, 0.1, 0.5] as const
const region = { x: 0, y: 0, width: 1, height: 1, frameWidth: 1, frameHeight: 1 }

test('after every step it shows what the reference engine draws with the later steps taken out', () => {
  const traced = traceChain(describe(whole, plainFacts), camera, 0.5, 0.5)
  expect(traced.map(({ stepId }) => stepId)).toEqual([null, ...whole.map(({ id }) => id)])
  traced.forEach(({ shown }, i) => {
    const prefix = [...whole.slice(0, Math.min(i, whole.length - 1)), whole.at(-1)!]
    const drawn = renderOnCpu(describe(prefix, plainFacts), Float32Array.of(...camera), region)
    shown.forEach((value, c) => expect(value).toBeCloseTo(drawn[c], 6))
  })
})

test('a step that is switched off is passed by', () => {
  const off = whole.map((step) => (step.operation === 'hueTurn' ? { ...step, enabled: false } : step))
  expect(traceChain(describe(off, plainFacts), camera, 0.5, 0.5)).toHaveLength(whole.length)
})
