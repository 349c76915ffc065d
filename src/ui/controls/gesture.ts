// One gesture on one value: the first real change begins it, so that touching a control without moving it
// leaves no trace in the history.
import { useRef } from 'react'

import type { ControlValue } from '../../operations/define.ts'
import { useWorkbench } from '../workbench-context.tsx'

export interface Gesture {
  change(value: ControlValue): void
  end(): void
  cancel(): void
  /** A change complete in itself. */
  set(value: ControlValue): void
}

interface Changes {
  /** Within a gesture that is under way. */
  change(value: ControlValue): void
  set(value: ControlValue): void
}

/** A gesture on whatever `changes` changes; `name` is what undo will name. */
export function useGestureOn(name: string, changes: Changes): Gesture {
  const workbench = useWorkbench()
  const running = useRef(false)
  return {
    change(value) {
      if (!running.current) workbench.beginGesture(name)
      running.current = true
      changes.change(value)
    },
    end() {
      if (running.current) workbench.endGesture()
      running.current = false
    },
    cancel() {
      if (running.current) workbench.cancelGesture()
      running.current = false
    },
    set: changes.set,
  }
}

/** A gesture on one value of a step. */
export function useGesture(stepId: string, key: string, name: string): Gesture {
  const workbench = useWorkbench()
  return useGestureOn(name, {
    change: (value) => workbench.changeValues(stepId, { [key]: value }),
    set: (value) => workbench.setValues(stepId, { [key]: value }, name),
  })
}

/** The same gesture for a part of the value: `toWhole` puts the part into it. */
export function partOf<T extends ControlValue>(gesture: Gesture, toWhole: (part: T) => ControlValue): Gesture {
  return {
    ...gesture,
    change: (part) => gesture.change(toWhole(part as T)),
    set: (part) => gesture.set(toWhole(part as T)),
  }
}
