// The brush that says where light was judged wrongly: which light it paints, and how wide. Only the screen knows it; strokes go
// into the step.
import { createStore } from 'zustand/vanilla'

import type { PickedLight } from '../../edits/light-picks.ts'

interface Brush {
  /** The step it paints for, or null while it is put away. */
  readonly stepId: string | null
  readonly light: PickedLight
  /** Radius as a share of the frame's width. */
  readonly radius: number
}

/** Radii as shares of the width: from a window pane to a sky (our choice). */
const leastRadius = 0.005
export const largestRadius = 0.2
/** One step of size by key or wheel (our choice). */
const sizeStep = 1.2

export const brush = createStore<Brush>(() => ({ stepId: null, light: 'shade', radius: 0.03 }))

export function takeBrush(stepId: string, light: PickedLight): void {
  brush.setState({ stepId, light })
}

export function putBrushAway(): void {
  brush.setState({ stepId: null })
}

export function setBrushRadius(radius: number): void {
  brush.setState({ radius: Math.min(Math.max(radius, leastRadius), largestRadius) })
}

export function stepBrushRadius(direction: 1 | -1): void {
  setBrushRadius(brush.getState().radius * sizeStep ** direction)
}
