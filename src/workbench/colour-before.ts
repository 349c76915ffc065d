// The colour of a place as it arrives at a step: the sample under the pointer taken through the steps before it.
import type { Chain } from '../edits/stack.ts'
import { samplePatch } from '../frame/sample-patch.ts'
import type { Supplies } from '../operations/define.ts'
import { describe } from '../pipeline/describe.ts'
import { traceChain } from '../pipeline/trace-chain.ts'
import type { ShownPicture } from './picture.ts'
import type { Place } from './session.ts'

/** Linear `workingRgb`, or null where the sample is clipped or too dark, or the step is off or not in the chain. */
export function colourBefore(
  { frame, facts }: ShownPicture,
  supplies: Supplies,
  chain: Chain,
  stepId: string,
  place: Place,
  radiusPx: number,
): readonly [number, number, number] | null {
  const mean = samplePatch(frame.sensor, facts.noise, [place.x, place.y], radiusPx).meanCameraRgb
  const description = describe(chain, facts, { supplies })
  const index = description.steps.findIndex((step) => step.stepId === stepId)
  if (!mean || index < 0) return null
  // The sensor comes first in a trace, so that what a step is given stands under the step's own index.
  return traceChain(description, [...mean, Math.max(...mean)], place.x, place.y)[index].rgb
}
