// Places are meant for what a step adds. Limited to a place, the one step that gives a frame its exposure leaves all else without;
// so the places can move on to a step of their own, while the first acts everywhere again.
import { exposureContrast } from '../operations/exposure-contrast.ts'
import type { StepMask } from '../operations/masks/mask.ts'
import { readValues } from '../operations/values.ts'
import { addStep, type Chain, setMask, type Step } from './stack.ts'

/** Exposure in EV that is lacking outside the step's places because no other step gives any; 0 where nothing is. */
export function lackingExposureEv(chain: Chain, { id, operation, version, values, mask }: Step): number {
  const isExposure = (step: Step) => step.operation === exposureContrast.id && step.enabled
  if (operation !== exposureContrast.id || !mask?.parts.length) return 0
  if (chain.some((other) => other.id !== id && isExposure(other) && !other.mask?.parts.length)) return 0
  return readValues(exposureContrast, values, version).exposureEv
}

/** The chain with a mask on a new step of initial values right behind the step, which acts everywhere again. */
export function withMaskOnOwnStep(chain: Chain, stepId: string, mask: StepMask): Chain {
  const index = chain.findIndex(({ id }) => id === stepId)
  const everywhere = setMask(chain, stepId, null)
  const added = addStep(everywhere, chain[index].operation, {}, index + 1)
  return setMask(added, added[index + 1].id, mask)
}
