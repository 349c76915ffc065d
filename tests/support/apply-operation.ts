// Runs one operation of the reference engine on one pixel, and the facts of an unremarkable frame to do so with.
import type { FrameFacts } from '../../src/frame/frame.ts'
import type { Controls, Operation, Supplies, ValuesOf } from '../../src/operations/define.ts'
import { initialValues } from '../../src/operations/values.ts'

/** Facts of a frame behind a 590 nm filter: mean and flat grey of sensor set A. */
export const plainFacts: FrameFacts = {
  meanCameraRgb: [0.342, 0.1, 0.054],
  referenceNeutral: [Math.log2(3.42), Math.log2(0.54)],
  noise: { fullScaleElectrons: 50_000, readNoiseElectrons: 3 },
  cameraToXyz: null,
  filterNm: 590,
  aspect: 1.5,
}

/** RGB after the operation; values not given are initial, `peak` 0 means nothing near saturation. */
export function applyOperation<C extends Controls>(
  operation: Operation<C>,
  rgb: readonly number[],
  values: Partial<ValuesOf<C>> = {},
  { facts = plainFacts, peak = 0, supplies = {} as Supplies } = {},
): [number, number, number] {
  const pixel = Float64Array.of(rgb[0], rgb[1], rgb[2], peak, 0.5, 0.5)
  const all = { ...initialValues(operation), ...values }
  operation.apply(pixel, operation.derive(all, facts), operation.tables?.(all, facts, supplies, 'step-1') ?? {})
  return [pixel[0], pixel[1], pixel[2]]
}
