// A point on the picture that is dragged or moved with arrow keys. One drag, or one held key, is one gesture.
import { useRef, type KeyboardEvent, type PointerEvent } from 'react'

import type { Place } from '../../workbench/session.ts'
import { arrowTravel } from '../picture/arrow-travel.ts'
import { placeBeside } from '../picture/picture-place.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** CSS pixels of an arrow press, plain and with shift (our choice). */
const plainPx = 4
const shiftPx = 40

interface PlaceHandleProps {
  readonly label: string
  readonly place: Place
  readonly onMove: (place: Place) => void
  readonly onEnd: () => void
  readonly onCancel: () => void
}

const percent = (share: number) => `${Math.round(share * 100)} %`

export function PlaceHandle({ label, place, onMove, onEnd, onCancel }: PlaceHandleProps) {
  const workbench = useWorkbench()
  const drag = useRef<{ x: number; y: number; place: Place } | null>(null)
  const css = workbench.cssOf(place)
  if (!css) return null

  const move = (event: PointerEvent) => {
    event.stopPropagation()
    const from = drag.current
    if (from) onMove(placeBeside(workbench, from.place, event.clientX - from.x, event.clientY - from.y))
  }
  const release = (event: PointerEvent) => {
    event.stopPropagation()
    drag.current = null
    onEnd()
  }
  const giveUp = () => {
    drag.current = null
    onCancel()
  }
  const press = (event: KeyboardEvent) => {
    const travel = arrowTravel(event, plainPx, shiftPx)
    if (travel) onMove(placeBeside(workbench, place, ...travel))
    else if (event.key === 'Escape' && drag.current) giveUp()
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  return (
    <button
      type="button"
      className="place-handle"
      aria-label={`${label}: ${percent(place.x)} across, ${percent(place.y)} down; arrow keys move it`}
      style={{ left: css.x, top: css.y }}
      onPointerDown={(event) => {
        event.stopPropagation()
        event.currentTarget.setPointerCapture(event.pointerId)
        drag.current = { x: event.clientX, y: event.clientY, place }
      }}
      onPointerMove={move}
      onPointerUp={release}
      onPointerCancel={giveUp}
      onKeyDown={press}
      onKeyUp={() => !drag.current && onEnd()}
      onBlur={onEnd}
    />
  )
}
