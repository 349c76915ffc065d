// Hands on the empty pad: dragging moves it, a click puts the neutral there, the wheel zooms about the pointer.
import { useEffect, useRef, type PointerEvent, type RefObject } from 'react'

import type { NeutralGains } from '../../edits/marks.ts'
import { gainsAt, type PadSize, pannedView, type PlaneView, zoomedView } from './plane-view.ts'

/** CSS pixels of travel that make a press a drag (our choice). */
const dragFromPx = 4
/** Zoom by the factor e for this many CSS pixels of wheel travel, as on the picture (our choice). */
const travelPerE = 500
/** CSS pixels per line and page, where a wheel counts in them (common practice, no source). */
const unitPx = [1, 16, 400]
/** A wheel that has been scrolling goes on scrolling for this long, in ms: else the pad would catch the panel (our choice). */
const scrollingMs = 400

interface PadPointer {
  readonly view: PlaneView
  readonly size: PadSize
  readonly onView: (change: (view: PlaneView) => PlaneView) => void
  readonly onPlace: (gains: NeutralGains) => void
}

export function usePadPointer({ view, size, onView, onPlace }: PadPointer) {
  const press = useRef<{ x: number; y: number; moved: boolean } | null>(null)
  return {
    onPointerDown(event: PointerEvent<HTMLDivElement>) {
      if (event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      press.current = { x: event.clientX, y: event.clientY, moved: false }
    },
    onPointerMove(event: PointerEvent<HTMLDivElement>) {
      const from = press.current
      if (!from) return
      const [dx, dy] = [event.clientX - from.x, event.clientY - from.y]
      if (!from.moved && Math.hypot(dx, dy) < dragFromPx) return
      onView((now) => pannedView(now, dx, dy))
      press.current = { x: event.clientX, y: event.clientY, moved: true }
    },
    onPointerUp(event: PointerEvent<HTMLDivElement>) {
      const from = press.current
      press.current = null
      if (!from || from.moved) return
      const box = event.currentTarget.getBoundingClientRect()
      onPlace(gainsAt(view, size, event.clientX - box.left, event.clientY - box.top))
    },
    onPointerCancel() {
      press.current = null
    },
  }
}

/** Not passive, so that the panel stays while the pad zooms. */
export function usePadWheel(
  pad: RefObject<HTMLDivElement | null>,
  size: PadSize,
  onZoom: (zoom: (view: PlaneView) => PlaneView) => void,
): void {
  useEffect(() => {
    const element = pad.current!
    let scrolledAt = -Infinity
    const scroll = (event: Event) => {
      scrolledAt = event.timeStamp
    }
    const turn = (event: WheelEvent) => {
      if (event.timeStamp - scrolledAt < scrollingMs) return
      event.preventDefault()
      const box = element.getBoundingClientRect()
      const [x, y] = [event.clientX - box.left, event.clientY - box.top]
      // A pinch on a touch pad arrives as a small wheel with ctrl.
      const factor = Math.exp((-event.deltaY * unitPx[event.deltaMode] * (event.ctrlKey ? 5 : 1)) / travelPerE)
      onZoom((view) => zoomedView(view, size, x, y, factor))
    }
    document.addEventListener('scroll', scroll, { capture: true })
    element.addEventListener('wheel', turn, { passive: false })
    return () => {
      document.removeEventListener('scroll', scroll, { capture: true })
      element.removeEventListener('wheel', turn)
    }
  }, [pad, size, onZoom])
}
