// Colour tables on the GPU give what the reference engine gives, behind every encoding, beyond the table's range too.
import { afterAll, beforeAll, expect, it } from 'vitest'

import { TABLE_ENCODINGS } from '../../src/colour/table-encoding.ts'
import { sampleCube } from '../../src/luts/sample-cube.ts'
import { colourLut, lutSupply } from '../../src/operations/colour-lut.ts'
import type { Supplies } from '../../src/operations/define.ts'
import { initialValues } from '../../src/operations/values.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { createFloatRun, type FloatRun } from './float-run.ts'
import { finiteRamp } from './pixel-ramp.ts'
import { roundingReach } from './rounding-reach.ts'
import { facts } from './sample-frame.ts'
import { verdict, worstPixel } from './worst-pixel.ts'

const bend = (rgb: Float64Array) => {
  const [r, g, b] = rgb
  rgb[0] = 0.9 * b + 0.05 * g * g
  rgb[1] = g ** 1.2 * (1 - 0.2 * r)
  rgb[2] = 0.85 * r + 0.1 * g * b
}
const exchange = (rgb: Float64Array) => rgb.set([rgb[2], rgb[1], rgb[0]])
const line = Float32Array.from({ length: 64 * 3 }, (_, i) => (Math.floor(i / 3) / 63) ** (1 + 0.2 * (i % 3)))
const supplies: Supplies = {
  [lutSupply('cube')]: { kind: '3d', width: 17, height: 17, data: sampleCube(17, bend) },
  [lutSupply('other')]: { kind: '3d', width: 33, height: 33, data: sampleCube(33, exchange) },
  [lutSupply('line')]: { kind: '1d', width: 64, height: 1, data: line },
}

let gpu: FloatRun
beforeAll(() => {
  gpu = createFloatRun()
})
afterAll(() => gpu.dispose())

function compare(values: Partial<ReturnType<typeof initialValues<typeof colourLut.controls>>>) {
  const all = { ...initialValues(colourLut), ...values }
  const description: PipelineDescription = {
    structureKey: 'colourLut',
    steps: [
      {
        stepId: '1',
        operation: colourLut as never,
        coefficients: colourLut.derive(all, facts),
        tables: colourLut.tables!(all, facts, supplies, '1'),
      },
    ],
    mosaicGains: [1, 1, 1],
  }
  const { rgba, width, height } = finiteRamp()
  const region = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }
  const allowed = roundingReach(description, rgba, width)
  return worstPixel(rgba, renderOnCpu(description, rgba, region), gpu.run(description, rgba, width, height), allowed)
}

it.each(Object.keys(TABLE_ENCODINGS))('%s agrees within 5e-6, again after other values on the same program', (id) => {
  const programs = gpu.programCount()
  for (const table of ['cube', 'other', 'line', 'missing']) {
    for (const gives of [id, 'srgb']) {
      const worst = compare({ table, takes: id, gives })
      console.log(`${id} ${table} gives ${gives}: ${worst.text}`)
      expect(verdict(worst, 5e-6)).toBe('agrees')
    }
  }
  expect(gpu.programCount() - programs).toBeLessThanOrEqual(1)
})
