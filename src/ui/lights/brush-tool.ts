// The brush that says where light was judged wrongly: which light it paints, and how wide. Only the screen knows it; strokes go
// into the step. Whether it is out is a matter of the pointer's tool.
import { createStore } from 'zustand/vanilla'

import type { PickedLight } from '../../edits/light-picks.ts'

interface Brush {
  readonly light: PickedLight
  /** Radius as a share of the frame's width. */
  readonly radius: number
}

/** Radii as shares of the width: from a window pane to a sky (our choice). */
const leastRadius = 0.005
export const largestRadius = 0.2
/** One step of size by key or wheel (our choice). */
const sizeStep = 1.2

export const brush = createStore<Brush>(() => ({ light: 'shade', radius: 0.03 }))

export function setBrushLight(light: PickedLight): void {
  brush.setState({ light })
}

export function setBrushRadius(radius: number): void {
  brush.setState({ radius: Math.min(Math.max(radius, leastRadius), largestRadius) })
}

export function stepBrushRadius(direction: 1 | -1): void {
  setBrushRadius(brush.getState().radius * sizeStep ** direction)
}
