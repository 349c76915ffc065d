// The named ways of seeing the picture.
import type { Workbench } from '../../workbench/workbench.ts'
import { screen } from '../screen-store.ts'

/** One notch of zoom by key (our choice). */
const zoomNotch = 1.25

/** What a change of zoom leaves in place: the probe, else the pointer, else the middle of the window. */
function anchor(workbench: Workbench) {
  const { probe, view } = workbench.session.getState()
  return probe?.place ?? screen.getState().pointer ?? (view.fit ? { x: 0.5, y: 0.5 } : view.centre)
}

export function showWhole(workbench: Workbench): void {
  workbench.setView({ fit: true })
}

/** One sensor pixel per screen pixel, about the probe or the pointer. */
export function showPixels(workbench: Workbench): void {
  workbench.setView({ fit: false, zoom: 1, centre: anchor(workbench) })
}

export function zoomByNotch(workbench: Workbench, direction: 1 | -1): void {
  workbench.zoomAbout(anchor(workbench), zoomNotch ** direction)
}
