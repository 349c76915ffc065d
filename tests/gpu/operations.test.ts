// Every operation, and chains of them, give on the GPU what the reference engine gives, in 32-bit float.
import { afterAll, beforeAll, describe as group, expect, it } from 'vitest'

import type { Control, ControlValue, Operation, Supplies } from '../../src/operations/define.ts'
import { operations } from '../../src/operations/index.ts'
import { shadePlane } from '../../src/operations/second-light.ts'
import { initialValues } from '../../src/operations/values.ts'
import { describe } from '../../src/pipeline/describe.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { createFloatRun, type FloatRun } from './float-run.ts'
import { finiteRamp, oddRamp } from './pixel-ramp.ts'
import { roundingReach } from './rounding-reach.ts'
import { facts } from './sample-frame.ts'
import { usualChain, usualPixels, usualSupplies } from './usual-chain.ts'
import { verdict, worstPixel } from './worst-pixel.ts'

/** A value away from the initial one: `share` of a slider's travel, the other toggle, the next choice, shifted numbers. */
function movedValue(control: Control, share: number): ControlValue {
  if (control.kind === 'slider') return control.min + share * (control.max - control.min)
  if (control.kind === 'toggle') return !control.initial
  if (control.kind === 'choice') return control.options[Math.floor(share * control.options.length)].value
  if (control.kind === 'numbers') return control.initial.map((number, i) => number + share * Math.cos(i))
  return control.initial
}

/** Every control at a share of its own, so that channels which should differ do. */
const movedValues = ({ controls }: Operation, share: number) =>
  Object.fromEntries(
    Object.entries(controls).map(([name, control], i) => [name, movedValue(control, (share + 0.37 * i) % 1)]),
  )

/** Tables for the operations that read some; steps here are called by their operations. */
const supplies: Supplies = {
  [shadePlane('secondLight')]: { kind: 'plane', width: 3, height: 2, data: Float32Array.of(0, 0.25, 1, 0.5, 1, 0.75) },
}

/** A description of one operation alone, without the output step that a drawable chain must end in. */
function alone(operation: Operation, values: Record<string, ControlValue>): PipelineDescription {
  const coefficients = operation.derive(values as never, facts)
  const tables = operation.tables?.(values as never, facts, supplies, operation.id) ?? {}
  return {
    structureKey: operation.id,
    steps: [{ stepId: '1', operation, coefficients, tables }],
    mosaicGains: [1, 1, 1],
  }
}

const chainOf = (values: (operation: Operation) => Record<string, ControlValue>) =>
  describe(
    operations.map((operation) => ({
      id: operation.id,
      operation: operation.id,
      version: operation.version,
      enabled: true,
      values: values(operation),
    })),
    facts,
    { supplies },
  )

let gpu: FloatRun
beforeAll(() => {
  gpu = createFloatRun()
})
afterAll(() => gpu.dispose())

function compare(description: PipelineDescription, reachOf?: typeof roundingReach) {
  const { rgba, width, height } = finiteRamp()
  const region = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }
  const allowed = reachOf?.(description, rgba, width)
  return worstPixel(rgba, renderOnCpu(description, rgba, region), gpu.run(description, rgba, width, height), allowed)
}

group.each(operations.map((operation) => [operation.id, operation] as const))('%s', (_id, operation) => {
  it('agrees at its initial values, and again after value changes on the same program', () => {
    const first = compare(alone(operation, initialValues(operation)))
    expect(verdict(first, operation.tolerance)).toBe('agrees')
    const programs = gpu.programCount()
    for (const share of [0.2, 0.4, 0.6, 0.85]) {
      const worst = compare(alone(operation, movedValues(operation, share)))
      console.log(`${operation.id} at ${share}: ${worst.text}`)
      expect(verdict(worst, operation.tolerance)).toBe('agrees')
    }
    expect(gpu.programCount()).toBe(programs)
  })
})

it('a whole chain agrees within 5e-6 beyond the reach of rounding, and again after a value change', () => {
  const programs = gpu.programCount()
  for (const values of [initialValues, ...[0.3, 0.6, 0.8].map((share) => (of: Operation) => movedValues(of, share))]) {
    const worst = compare(chainOf(values), roundingReach)
    console.log(`chain: ${worst.text}`)
    expect(verdict(worst, 5e-6)).toBe('agrees')
  }
  expect(gpu.programCount()).toBe(programs + 1)
})

/** One code of 16 bits. */
const oneCode = 1 / 65535

it.each([false, true])(
  'a usual picture agrees within a code of 16 bits at every pixel, black and white: %s',
  (colourless) => {
    const { rgba, width, height } = usualPixels()
    const region = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }
    const description = describe(usualChain(colourless), facts, { supplies: usualSupplies })
    const [cpu, drawn] = [renderOnCpu(description, rgba, region), gpu.run(description, rgba, width, height)]
    const worst = worstPixel(rgba, cpu, drawn)
    console.log(`usual picture: ${worst.text}`)
    expect(verdict(worst, oneCode)).toBe('agrees')
    const near = cpu.filter((value, i) => Math.abs(value - drawn[i]) <= 5e-6).length
    expect(near / cpu.length).toBeGreaterThan(0.99)
  },
)

it('NaN and infinities leave a whole chain as numbers in 0…1', () => {
  const { rgba, width, height } = oddRamp()
  const drawn = gpu.run(chainOf(initialValues), rgba, width, height)
  for (const value of drawn) expect(value >= 0 && value <= 1, `${value}`).toBe(true)
})
