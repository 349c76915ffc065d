// The frame's neutral as a point of the pad: one drag, or one held key, is one entry of the history.
import { useRef } from 'react'

import type { NeutralGains } from '../../edits/marks.ts'
import { useWorkbench } from '../workbench-context.tsx'
import { PlaneDot } from './plane-dot.tsx'
import type { PadSize, PlaneView } from './plane-view.ts'

interface NeutralDotProps {
  readonly stepId: string
  readonly gains: NeutralGains
  readonly view: PlaneView
  readonly size: PadSize
}

/** What undo will name. */
export const planeChangeName = 'Neutral on the plane'

export function NeutralDot({ stepId, gains, view, size }: NeutralDotProps) {
  const workbench = useWorkbench()
  const running = useRef(false)
  const finish = (close: () => void) => {
    if (running.current) close()
    running.current = false
  }
  const move = {
    change(changed: NeutralGains) {
      if (!running.current) workbench.beginGesture(planeChangeName)
      running.current = true
      workbench.changeValues(stepId, { ...changed })
    },
    end: () => finish(workbench.endGesture),
    cancel: () => finish(workbench.cancelGesture),
  }
  return <PlaneDot kind="neutral" name="Neutral" gains={gains} view={view} size={size} move={move} />
}
