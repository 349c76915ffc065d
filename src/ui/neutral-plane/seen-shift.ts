// Warmth as seen as a value that is read and set: read from where the neutral stands, set by solving backwards through the chain.
// Nothing is kept beside the chain, so undo, other edits and other frames can never leave a slider in a wrong place.
import { useRef, useState } from 'react'

import type { Step } from '../../edits/stack.ts'
import { neutral, seenStart } from '../../operations/neutral.ts'
import { readValues } from '../../operations/values.ts'
import type { NeutralOutlook, SeenShift } from '../../workbench/neutral-outlook.ts'
import type { Gesture } from '../controls/gesture.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Positions are shown and stepped in these units; what the solver leaves is smaller. */
const grain = 0.1

const toGrain = (value: number) => (Number.isFinite(value) ? Number((Math.round(value / grain) * grain).toFixed(1)) : 0)

interface SeenControl {
  readonly shift: SeenShift
  /** The direction last asked for that the chain could not show, until something else is asked or edited. */
  readonly stoppedAt: keyof SeenShift | null
  gesture(axis: keyof SeenShift, name: string): Gesture
}

/** The shift of the neutral step as the finished picture shows it; `name` in `gesture` is what undo will name. */
export function useSeenShift(step: Step, outlook: NeutralOutlook): SeenControl {
  const workbench = useWorkbench()
  const running = useRef(false)
  const [stop, setStop] = useState<{ axis: keyof SeenShift; values: Step['values']; outlook: NeutralOutlook } | null>(
    null,
  )
  const values = readValues(neutral, step.values, step.version)
  const start = seenStart(values)
  const { warm, magenta } = outlook.shiftOf(start, values)
  const shift = { warm: toGrain(warm), magenta: toGrain(magenta) }

  /** Changes of the step for a position on one axis, the other staying where it is. */
  function solved(axis: keyof SeenShift, value: number) {
    const { gains, reached } = outlook.gainsFor(start, { ...shift, [axis]: value })
    const { redStops, blueStops } = gains
    return {
      reached,
      changes: { redStops, blueStops, seenFrom: [start.redStops, start.blueStops, redStops, blueStops] },
    }
  }
  const isStopped = stop?.outlook === outlook && stop.values === step.values
  return {
    shift,
    stoppedAt: isStopped ? stop.axis : null,
    gesture(axis, name) {
      const put = (value: unknown, write: (changes: ReturnType<typeof solved>['changes']) => void) => {
        const { changes, reached } = solved(axis, Number(value))
        write(changes)
        const written = workbench.edit.getState().shown?.chain.find(({ id }) => id === step.id)
        setStop(reached || !written ? null : { axis, values: written.values, outlook })
      }
      const finish = (close: () => void) => {
        if (running.current) close()
        running.current = false
      }
      return {
        change(value) {
          if (!running.current) workbench.beginGesture(name)
          running.current = true
          put(value, (changes) => workbench.changeValues(step.id, changes))
        },
        set: (value) => put(value, (changes) => workbench.setValues(step.id, changes, name)),
        end: () => finish(workbench.endGesture),
        cancel: () => finish(workbench.cancelGesture),
      }
    },
  }
}
