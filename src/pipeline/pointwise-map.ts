// Steps of a chain as one map of colours: linear `workingRgb` in and out. Only steps that do the same everywhere can be one; what
// acts differently from place to place cannot leave as a table.
import type { Pixel } from '../operations/define.ts'
import type { DescribedStep, PipelineDescription } from './description.ts'
import { runStep } from './run-step.ts'

/** Changes a colour in place: three numbers, or more of which the first three are one. */
export type ColourMap = (rgb: Float64Array) => void

/** Kinds of places that are told by a colour alone. */
const byColour: readonly string[] = ['level', 'hue']

/** Whether a step stands between light and output and makes the same of a colour at every place. */
export function isPointwise(step: DescribedStep): boolean {
  const isEverywhere = !step.mask || step.mask.parts.every(({ kind }) => byColour.includes(kind.id))
  return (
    step.operation.place === 'free' && isEverywhere && Object.values(step.tables).every(({ kind }) => kind !== 'plane')
  )
}

/** The map that these steps make, one after the other. */
export function pointwiseMap(steps: readonly DescribedStep[]): ColourMap {
  // No clipping, in the middle of the frame.
  const pixel: Pixel = Float64Array.of(0, 0, 0, 0, 0.5, 0.5)
  return (rgb) => {
    for (let i = 0; i < 3; i++) pixel[i] = rgb[i]
    for (const step of steps) runStep(step, pixel)
    for (let i = 0; i < 3; i++) rgb[i] = pixel[i]
  }
}

/** The described steps of these ids in the order of the chain. */
export function stepsOf({ steps }: PipelineDescription, stepIds: readonly string[]): readonly DescribedStep[] {
  return steps.filter(({ stepId }) => stepIds.includes(stepId))
}

/**
 * Linear `workingRgb` of pixels where the steps begin, interleaved: after all steps in front of the first of `stepIds`. `pixels`
 * come as `Pixel`s one after the other, six numbers each, in `cameraRgb`.
 */
export function coloursBefore(
  { steps }: PipelineDescription,
  stepIds: readonly string[],
  pixels: Float64Array,
): Float64Array {
  const first = steps.findIndex(({ stepId }) => stepIds.includes(stepId))
  const ahead = steps.slice(0, Math.max(first, 0))
  const colours = new Float64Array(pixels.length / 2)
  for (let from = 0, to = 0; from < pixels.length; from += 6, to += 3) {
    const pixel: Pixel = pixels.slice(from, from + 6)
    for (const step of ahead) runStep(step, pixel)
    colours.set(pixel.subarray(0, 3), to)
  }
  return colours
}
