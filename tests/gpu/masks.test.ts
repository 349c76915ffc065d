// Masks weigh on the GPU what they weigh in the reference engine, in 32-bit float, and again after a change of their numbers on
// the same program.
import { afterAll, beforeAll, expect, it } from 'vitest'

import { setMask } from '../../src/edits/stack.ts'
import type { Supplies } from '../../src/operations/define.ts'
import { makePart, materialPlaneName, type MaskPart } from '../../src/operations/masks/mask.ts'
import { operationById } from '../../src/operations/index.ts'
import { initialValues } from '../../src/operations/values.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { createFloatRun, type FloatRun } from './float-run.ts'
import { finiteRamp } from './pixel-ramp.ts'
import { roundingReach } from './rounding-reach.ts'
import { facts } from './sample-frame.ts'
import { verdict, worstPixel } from './worst-pixel.ts'

let gpu: FloatRun
beforeAll(() => {
  gpu = createFloatRun()
})
afterAll(() => gpu.dispose())

const supplies: Supplies = {
  [materialPlaneName]: { kind: 'plane', width: 5, height: 1, data: Float32Array.of(-0.9, -0.4, 0.02, 0.3, 0.7) },
}
const plain = ['neutral', 'hueTurn', 'exposureContrast', 'outputTransform'].map((id) => {
  const operation = operationById(id)
  const values = { ...initialValues(operation), ...(id === 'hueTurn' && { angleDeg: 70 }) }
  return { id, operation: id, version: operation.version, enabled: true, values }
})
const chainWith = (parts: readonly MaskPart[], inverted: boolean, strength: number, exposureEv: number) => {
  const brighter = plain.map((step) =>
    step.id === 'exposureContrast' ? { ...step, values: { ...step.values, exposureEv } } : step,
  )
  const turned = setMask(brighter, 'hueTurn', { parts, inverted, strength })
  return setMask(turned, 'exposureContrast', { parts: parts.slice(0, 1), inverted: false, strength: 1 })
}

function compare(parts: readonly MaskPart[], inverted: boolean, strength = 1, exposureEv = 1) {
  const { rgba, width, height } = finiteRamp()
  const description = describe(chainWith(parts, inverted, strength, exposureEv), facts, { supplies })
  const region = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }
  const reach = roundingReach(description, rgba, width)
  return worstPixel(rgba, renderOnCpu(description, rgba, region), gpu.run(description, rgba, width, height), reach)
}

/** Largest difference of a step behind one kind, absolute below 1 and relative above: what is measured, doubled for other drivers. */
const limits: Record<string, number> = {
  foliage: 2e-6,
  sky: 2e-6,
  level: 2e-6,
  hue: 6e-6,
  radial: 2e-6,
  graduated: 2e-6,
}

it.each(Object.keys(limits))('a step behind %s alone agrees', (kind) => {
  const { rgba, width, height } = finiteRamp()
  const whole = describe(chainWith([makePart(kind)], false, 1, 1), facts, { supplies })
  const steps = whole.steps.filter(({ operation }) => operation.id === 'exposureContrast')
  const alone = { ...whole, structureKey: `${kind} alone`, steps }
  const region = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }
  const worst = worstPixel(rgba, renderOnCpu(alone, rgba, region), gpu.run(alone, rgba, width, height))
  console.log(`${kind}: ${worst.text}`)
  expect(verdict(worst, limits[kind])).toBe('agrees')
})

it('six parts joined in all ways agree, and again with other numbers on the same program', () => {
  const parts = (size: number) => [
    makePart('foliage', { softness: 0.2 * size }),
    { ...makePart('radial', { halfWidth: 0.3 * size }, 'or'), inverted: true },
    makePart('level', { fromEv: -4 * size }, 'and'),
    makePart('hue', { hueDeg: 80 * size }, 'or'),
    makePart('graduated', { ends: [0.5, 0.25 * size, 0.5, 0.75] }, 'not'),
    makePart('sky', { borderStops: 0.2 * size }, 'or'),
  ]
  const first = compare(parts(1), true)
  const programs = gpu.programCount()
  for (const size of [0.6, 1.4]) {
    const worst = compare(parts(size), true, 0.7, size)
    console.log(`six parts: ${worst.text}`)
    expect(verdict(worst, 5e-6)).toBe('agrees')
  }
  expect(verdict(first, 5e-6)).toBe('agrees')
  expect(gpu.programCount()).toBe(programs)
})
