// Places of the picture in terms of the element that shows it: nearest place inside, and moving by screen distances.
import type { Place } from '../../workbench/session.ts'
import { effectiveZoom } from '../../workbench/view-geometry.ts'
import type { Workbench } from '../../workbench/workbench.ts'

/** Largest coordinate that still lies inside the frame. */
const lastInside = 1 - 1e-6
/** A place nearer to the edge of the window than this scrolls into it, in CSS pixels (our choice). */
const edgePx = 48

const inside = (value: number) => Math.min(Math.max(value, 0), lastInside)

/** The element that shows the picture, or null on the start screen. */
export function pictureArea(): HTMLElement | null {
  return document.getElementById('picture-area')
}

/** Size of the whole frame on screen in CSS pixels, or null while none is shown. */
function shownSize(workbench: Workbench): { width: number; height: number } | null {
  const start = workbench.cssOf({ x: 0, y: 0 })
  const end = workbench.cssOf({ x: 1, y: 1 })
  return start && end ? { width: end.x - start.x, height: end.y - start.y } : null
}

/** Device pixels per sensor pixel as shown in `area`, or null while no frame is shown. */
function shownZoom(workbench: Workbench, area: HTMLElement): number | null {
  const { view, shown } = workbench.session.getState()
  if (!shown) return null
  const { clientWidth: width, clientHeight: height } = area
  return effectiveZoom(view, shown, { width, height, devicePixelRatio })
}

/** The place `dx`, `dy` CSS pixels from `place`, kept inside the frame. */
export function placeBeside(workbench: Workbench, place: Place, dx: number, dy: number): Place {
  const size = shownSize(workbench)
  return size ? { x: inside(place.x + dx / size.width), y: inside(place.y + dy / size.height) } : place
}

/** Moves the picture by CSS pixels; a fitted picture keeps its size and leaves the fit. */
export function panBy(workbench: Workbench, area: HTMLElement, dx: number, dy: number): void {
  const { view } = workbench.session.getState()
  const zoom = shownZoom(workbench, area)
  if (zoom === null) return
  const centre = placeBeside(workbench, view.fit ? { x: 0.5, y: 0.5 } : view.centre, -dx, -dy)
  workbench.setView({ fit: false, zoom, centre })
}

/** Moves the picture just as far as brings `place` well into the window. */
export function bringIntoWindow(workbench: Workbench, area: HTMLElement, place: Place): void {
  const css = workbench.cssOf(place)
  if (!css || workbench.session.getState().view.fit) return
  const need = (at: number, size: number) => (at < edgePx ? edgePx - at : at > size - edgePx ? size - edgePx - at : 0)
  const dx = need(css.x, area.clientWidth)
  const dy = need(css.y, area.clientHeight)
  if (dx !== 0 || dy !== 0) panBy(workbench, area, dx, dy)
}
