// One gesture on one number of a step's places.
import type { Step } from '../../edits/stack.ts'
import type { ControlValue } from '../../operations/define.ts'
import type { MaskPart, StepMask } from '../../operations/masks/mask.ts'
import { type Gesture, useGestureOn } from '../controls/gesture.ts'
import { useWorkbench } from '../workbench-context.tsx'

const nowhereLimited: StepMask = { parts: [], inverted: false, strength: 1 }

/** The places of a step, or none. */
export const maskOf = (step: Step): StepMask => step.mask ?? nowhereLimited

/** The mask with one part changed. */
export function withPart(mask: StepMask, index: number, change: Partial<MaskPart>): StepMask {
  return { ...mask, parts: mask.parts.with(index, { ...mask.parts[index], ...change }) }
}

/** `name` is what undo will name; `toMask` puts the value into the mask. */
export function useMaskGesture(stepId: string, name: string, toMask: (value: ControlValue) => StepMask): Gesture {
  const workbench = useWorkbench()
  return useGestureOn(name, {
    change: (value) => workbench.changeMask(stepId, toMask(value)),
    set: (value) => workbench.setMask(stepId, toMask(value), name),
  })
}
