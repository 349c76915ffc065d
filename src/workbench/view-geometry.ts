// Where the frame lies in the window: pure geometry between CSS pixels of the canvas and places in the frame.
import type { Place, View } from './session.ts'

/** Sizes in CSS pixels; `devicePixelRatio` device pixels per CSS pixel. */
export interface Viewport {
  readonly width: number
  readonly height: number
  readonly devicePixelRatio: number
}
export interface FrameSize {
  readonly width: number
  readonly height: number
}
/** Upper left of the frame in CSS pixels, and CSS pixels per sensor pixel. */
export interface Layout {
  readonly left: number
  readonly top: number
  readonly scale: number
}

/** Margin around a fitted picture in CSS pixels, so that the surround is seen on all sides (our choice). */
const fitMargin = 24
/** Device pixels per sensor pixel, largest and (relative to fit) smallest useful zoom (our choice). */
const largestZoom = 16

/** Device pixels per sensor pixel at which the whole frame just fits. */
function fitZoom(frame: FrameSize, viewport: Viewport): number {
  const room = (size: number) => Math.max(size - 2 * fitMargin, 1)
  return Math.min(room(viewport.width) / frame.width, room(viewport.height) / frame.height) * viewport.devicePixelRatio
}

/** The zoom the view really has, in device pixels per sensor pixel. */
export function effectiveZoom(view: View, frame: FrameSize, viewport: Viewport): number {
  return view.fit ? fitZoom(frame, viewport) : view.zoom
}

export function layoutOf(view: View, frame: FrameSize, viewport: Viewport): Layout {
  const zoom = effectiveZoom(view, frame, viewport)
  const scale = zoom / viewport.devicePixelRatio
  const centre = view.fit ? { x: 0.5, y: 0.5 } : view.centre
  // Whole device pixels, so that 1:1 really shows one sensor pixel per screen pixel.
  const snap = (css: number) => Math.round(css * viewport.devicePixelRatio) / viewport.devicePixelRatio
  return {
    left: snap(viewport.width / 2 - centre.x * frame.width * scale),
    top: snap(viewport.height / 2 - centre.y * frame.height * scale),
    scale,
  }
}

/** Place under a CSS pixel, or null outside the frame. */
export function placeAt(layout: Layout, frame: FrameSize, cssX: number, cssY: number): Place | null {
  const x = (cssX - layout.left) / (frame.width * layout.scale)
  const y = (cssY - layout.top) / (frame.height * layout.scale)
  return x >= 0 && x < 1 && y >= 0 && y < 1 ? { x, y } : null
}

/** CSS pixel of a place. */
export function cssOf(layout: Layout, frame: FrameSize, place: Place): { x: number; y: number } {
  return {
    x: layout.left + place.x * frame.width * layout.scale,
    y: layout.top + place.y * frame.height * layout.scale,
  }
}

/** The view after zooming by `factor` with `place` staying where it is on screen; never smaller than a third of fit. */
export function zoomedAbout(view: View, frame: FrameSize, viewport: Viewport, place: Place, factor: number): View {
  const before = effectiveZoom(view, frame, viewport)
  const zoom = Math.min(Math.max(before * factor, fitZoom(frame, viewport) / 3), largestZoom)
  const centre = view.fit ? { x: 0.5, y: 0.5 } : view.centre
  const kept = 1 - before / zoom
  return {
    fit: false,
    zoom,
    centre: {
      x: Math.min(Math.max(centre.x + (place.x - centre.x) * kept, 0), 1),
      y: Math.min(Math.max(centre.y + (place.y - centre.y) * kept, 0), 1),
    },
  }
}
