// Drawing an outline for the probe: freehand with pointer or finger, corner by corner with keys. The draft is the screen's own
// until it is closed; then the probe samples what it holds.
import type { Place } from '../../workbench/session.ts'
import type { Workbench } from '../../workbench/workbench.ts'
import { pictureArea, placeBeside } from './picture-place.ts'
import { screen } from '../screen-store.ts'

/** Corners of a freehand line are at least this far apart, in CSS pixels (our choice). */
const cornerPx = 3
const fewestCorners = 3

export function isOutlining(workbench: Workbench): boolean {
  const { tool, sampleWay } = workbench.session.getState()
  return tool === 'probe' && sampleWay === 'outline'
}

/** From ring to outline and back; without the probe up, takes it up for an outline. */
export function toggleSampleWay(workbench: Workbench): void {
  const wasOutlining = isOutlining(workbench)
  dropOutline()
  if (workbench.session.getState().tool !== 'probe') {
    workbench.setTool('probe')
    pictureArea()?.focus({ preventScroll: true })
  }
  workbench.setSampleWay(wasOutlining ? 'ring' : 'outline')
}

/** Begins anew; what was sampled before is let go. */
export function beginOutline(workbench: Workbench, place: Place | null): void {
  workbench.roam(null)
  screen.setState({ outline: place ? [place] : [] })
}

/** Goes on to a place; one outside the frame, or hardly away from the last corner, adds nothing. */
export function extendOutline(workbench: Workbench, place: Place | null): void {
  const { outline } = screen.getState()
  if (!outline || !place) return
  const last = outline.at(-1)
  const [from, to] = [last && workbench.cssOf(last), workbench.cssOf(place)]
  if (from && to && Math.hypot(to.x - from.x, to.y - from.y) < cornerPx) return
  screen.setState({ outline: [...outline, place] })
}

export function dropOutline(): void {
  if (screen.getState().outline) screen.setState({ outline: null })
}

/** Joins the last corner to the first and samples; a draft of too few corners is dropped. */
export function closeOutline(workbench: Workbench): void {
  const { outline } = screen.getState()
  dropOutline()
  if (outline && outline.length >= fewestCorners) workbench.probeOutline(outline.map(({ x, y }) => [x, y]))
}

export function canCloseOutline(): boolean {
  return (screen.getState().outline?.length ?? 0) >= fewestCorners
}

/** Moves the cursor that sets corners by CSS pixels; it comes up in the middle of what is seen. */
export function moveCorner(workbench: Workbench, dx: number, dy: number): Place {
  const { corner, pointer } = screen.getState()
  const { view } = workbench.session.getState()
  const from = corner ?? pointer ?? (view.fit ? { x: 0.5, y: 0.5 } : view.centre)
  const to = corner ? placeBeside(workbench, from, dx, dy) : from
  screen.setState({ corner: to })
  return to
}

/** Sets a corner at the cursor. */
export function setCorner(workbench: Workbench): void {
  const corner = moveCorner(workbench, 0, 0)
  if (screen.getState().outline) extendOutline(workbench, corner)
  else beginOutline(workbench, corner)
}

export function takeBackCorner(): void {
  const { outline } = screen.getState()
  if (outline) screen.setState({ outline: outline.length > 1 ? outline.slice(0, -1) : null })
}
