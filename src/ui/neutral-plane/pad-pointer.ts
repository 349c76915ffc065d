// Hands on the empty pad: dragging moves it, a click puts the neutral there, wheel and two fingers zoom.
import { useEffect, useRef, type PointerEvent, type RefObject } from 'react'

import type { NeutralGains } from '../../edits/marks.ts'
import { gainsAt, type PadSize, pannedView, type PlaneView, toGrain, zoomedView } from './plane-view.ts'

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

interface Press {
  readonly x: number
  readonly y: number
  readonly moved: boolean
}

export function usePadPointer({ view, size, onView, onPlace }: PadPointer) {
  const presses = useRef(new Map<number, Press>())

  /** Two fingers: what lies between them stays there and grows with their distance. */
  function pinch(box: DOMRect, from: Press, to: Press, other: Press) {
    const factor =
      Math.hypot(to.x - other.x, to.y - other.y) / Math.max(Math.hypot(from.x - other.x, from.y - other.y), 1)
    const [x, y] = [(to.x + other.x) / 2 - box.left, (to.y + other.y) / 2 - box.top]
    onView((now) => zoomedView(pannedView(now, (to.x - from.x) / 2, (to.y - from.y) / 2), size, x, y, factor))
  }

  return {
    onPointerDown(event: PointerEvent<HTMLDivElement>) {
      if (event.button !== 0) return
      event.currentTarget.setPointerCapture(event.pointerId)
      presses.current.set(event.pointerId, { x: event.clientX, y: event.clientY, moved: false })
    },
    onPointerMove(event: PointerEvent<HTMLDivElement>) {
      const from = presses.current.get(event.pointerId)
      if (!from) return
      const [dx, dy] = [event.clientX - from.x, event.clientY - from.y]
      if (!from.moved && Math.hypot(dx, dy) < dragFromPx) return
      const to = { x: event.clientX, y: event.clientY, moved: true }
      const other = [...presses.current].find(([id]) => id !== event.pointerId)
      if (other) pinch(event.currentTarget.getBoundingClientRect(), from, to, other[1])
      else onView((now) => pannedView(now, dx, dy))
      presses.current.set(event.pointerId, to)
      if (other) presses.current.set(other[0], { ...other[1], moved: true })
    },
    onPointerUp(event: PointerEvent<HTMLDivElement>) {
      const from = presses.current.get(event.pointerId)
      presses.current.delete(event.pointerId)
      if (!from || from.moved) return
      const box = event.currentTarget.getBoundingClientRect()
      onPlace(toGrain(gainsAt(view, size, event.clientX - box.left, event.clientY - box.top)))
    },
    onPointerCancel(event: PointerEvent<HTMLDivElement>) {
      presses.current.delete(event.pointerId)
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
