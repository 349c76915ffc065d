// The veil that shows where a step acts: outside its reach the picture is the picture to the last bit, inside it has no colour.
import { afterAll, beforeAll, expect, it } from 'vitest'

import { describe } from '../../src/pipeline/describe.ts'
import type { Supplies } from '../../src/operations/define.ts'
import { operationById } from '../../src/operations/index.ts'
import { shadePlane } from '../../src/operations/second-light.ts'
import { initialValues } from '../../src/operations/values.ts'
import { createFloatRun, type FloatRun } from './float-run.ts'
import { facts } from './sample-frame.ts'

let gpu: FloatRun
beforeAll(() => {
  gpu = createFloatRun()
})
afterAll(() => gpu.dispose())

const supplies: Supplies = {
  [shadePlane('secondLight')]: { kind: 'plane', width: 4, height: 1, data: Float32Array.of(0, 0, 1, 1) },
}
const chain = ['neutral', 'secondLight', 'outputTransform'].map((id) => {
  const operation = operationById(id)
  return { id, operation: id, version: operation.version, enabled: true, values: initialValues(operation) }
})
const width = 64
const rgba = Float32Array.from({ length: width * 4 }, (_, i) => [0.4, 0.2, 0.1, 0.4][i % 4])
const drawn = (reachOf: string | null) => gpu.run(describe(chain, facts, { supplies, reachOf }), rgba, width, 1)

it('veils the reach of the step that is asked for and nothing else', () => {
  const [plain, veiled] = [drawn(null), drawn('secondLight')]
  const half = (width / 4) * 3
  expect(veiled.slice(0, half)).toEqual(plain.slice(0, half))
  const chroma = (rgb: Float32Array, x: number) =>
    Math.max(...rgb.slice(x * 3, x * 3 + 3)) - Math.min(...rgb.slice(x * 3, x * 3 + 3))
  for (let x = 56; x < width; x++) expect(chroma(veiled, x)).toBeLessThan(0.15 * chroma(plain, x))
})

it('a step without a reach of its own, or one that is not there, changes nothing', () => {
  for (const id of ['neutral', 'gone']) expect(drawn(id)).toEqual(drawn(null))
})
