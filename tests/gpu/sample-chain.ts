// Chains for drawing tests: every operation there is, at values that do something.
import type { ControlValue } from '../../src/operations/define.ts'
import { describe } from '../../src/pipeline/describe.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'
import { facts } from './sample-frame.ts'

const values: Record<string, Record<string, ControlValue>> = {
  neutral: { redStops: -0.5, blueStops: 0.37, holdBrightness: true, highlightGuard: true },
  channelMix: { rows: [0, 0, 1, 0, 1, 0, 1, 0, 0] },
  hueTurn: { angleDeg: 25 },
  exposureContrast: { exposureEv: 0.4, contrast: 0.15, pivotEv: 0, shoulder: 0.3 },
  outputTransform: { space: 'srgb' },
}

/** The whole chain with this neutral; `without` leaves operations out. */
export function sampleChain(redStops = -0.5, blueStops = 0.37, without: readonly string[] = []): PipelineDescription {
  const steps = Object.entries(values)
    .filter(([operation]) => !without.includes(operation))
    .map(([operation, initial]) => {
      const own = operation === 'neutral' ? { ...initial, redStops, blueStops } : initial
      return { id: operation, operation, version: 1, enabled: true, values: own }
    })
  return describe(steps, facts)
}
