// Mouse, pen and touch on the picture: dragging moves it, two fingers zoom, the probe roams under the pointer and a click
// makes the place neutral, or with shift a mark. A finger hides what it points at, so touch only roams; buttons do that. While the probe
// takes outlines, one pointer draws them. A drag that begins on the line of the divided picture moves the line.
import { useMemo, type PointerEvent, type RefObject } from 'react'

import type { Workbench } from '../../workbench/workbench.ts'
import { placeDivide } from './divide-tool.ts'
import { beginOutline, closeOutline, dropOutline, extendOutline, isOutlining } from './outline-tool.ts'
import { panBy } from './picture-place.ts'
import { keepMark, makeNeutral } from './probe-tool.ts'
import { setPointer } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** CSS pixels of travel that make a press a drag (our choice). */
const dragFromPx = 4

interface Press {
  x: number
  y: number
  moved: boolean
  /** Where the line of the divided picture stood when it was taken, less where the pointer was; null where it was not taken. */
  readonly lineOffset: number | null
}
interface Point {
  readonly x: number
  readonly y: number
}

const middle = (a: Point, b: Point) => ({ x: (a.x + b.x) / 2, y: (a.y + b.y) / 2 })
const distance = (a: Point, b: Point) => Math.hypot(a.x - b.x, a.y - b.y)

function pinch(workbench: Workbench, area: HTMLElement, before: [Point, Point], after: [Point, Point]) {
  const [from, to] = [middle(...before), middle(...after)]
  panBy(workbench, area, to.x - from.x, to.y - from.y)
  const place = workbench.placeAt(to.x, to.y)
  if (place) workbench.zoomAbout(place, distance(...after) / Math.max(distance(...before), 1))
}

function handlersFor(workbench: Workbench, area: RefObject<HTMLDivElement | null>) {
  const presses = new Map<number, Press>()
  const pointOf = (event: PointerEvent): Point => {
    const box = area.current!.getBoundingClientRect()
    return { x: event.clientX - box.left, y: event.clientY - box.top }
  }
  const shareAcross = (x: number) => x / Math.max(area.current!.clientWidth, 1)
  const lineOffset = ({ target }: PointerEvent, { x }: Point): number | null => {
    const { divide } = workbench.session.getState()
    const isOnLine = target instanceof Element && target.matches('.divide-line') && !isOutlining(workbench)
    return isOnLine && divide !== null ? divide - shareAcross(x) : null
  }
  const isRoaming = () => workbench.session.getState().tool === 'probe' && !isOutlining(workbench)

  return {
    onPointerDown(event: PointerEvent) {
      if (event.button !== 0) return
      area.current!.setPointerCapture(event.pointerId)
      const point = pointOf(event)
      presses.set(event.pointerId, { ...point, moved: false, lineOffset: lineOffset(event, point) })
      if (!isOutlining(workbench)) return
      if (presses.size === 1) beginOutline(workbench, workbench.placeAt(point.x, point.y))
      else dropOutline()
    },

    onPointerMove(event: PointerEvent) {
      const point = pointOf(event)
      const press = presses.get(event.pointerId)
      const place = workbench.placeAt(point.x, point.y)
      setPointer(place)
      if (press && !press.moved && distance(point, press) < dragFromPx) return
      const roams = isRoaming() && (!press || event.pointerType === 'touch')
      if (presses.size === 2 && press) {
        const other = [...presses].find(([id]) => id !== event.pointerId)![1]
        pinch(workbench, area.current!, [press, other], [point, other])
      } else if (press && press.lineOffset !== null) placeDivide(workbench, press.lineOffset + shareAcross(point.x))
      else if (isOutlining(workbench)) {
        if (press) extendOutline(workbench, place)
      } else if (roams) workbench.roam(place)
      else if (press) panBy(workbench, area.current!, point.x - press.x, point.y - press.y)
      if (press) presses.set(event.pointerId, { ...press, ...point, moved: true })
    },

    onPointerUp(event: PointerEvent) {
      const press = presses.get(event.pointerId)
      presses.delete(event.pointerId)
      if (press && isOutlining(workbench)) closeOutline(workbench)
      if (!press || press.moved || !isRoaming()) return
      const point = pointOf(event)
      workbench.roam(workbench.placeAt(point.x, point.y))
      if (event.pointerType === 'touch') return
      if (event.shiftKey) keepMark(workbench)
      else makeNeutral(workbench)
    },

    onPointerCancel(event: PointerEvent) {
      presses.delete(event.pointerId)
      dropOutline()
    },

    onPointerLeave(event: PointerEvent) {
      setPointer(null)
      if (isRoaming() && event.pointerType !== 'touch') workbench.roam(null)
    },
  }
}

export function usePicturePointer(area: RefObject<HTMLDivElement | null>) {
  const workbench = useWorkbench()
  return useMemo(() => handlersFor(workbench, area), [workbench, area])
}
