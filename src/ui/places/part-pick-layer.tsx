// Picking what a place is made of: a press in the picture, or arrow keys and Enter; Escape leaves it.
import { useRef, useState, type KeyboardEvent, type PointerEvent } from 'react'

import type { Step } from '../../edits/stack.ts'
import { maskKindById } from '../../operations/masks/mask.ts'
import type { Place } from '../../workbench/session.ts'
import { usePlacesOnScreen } from '../lights/places-on-screen.ts'
import { arrowTravel } from '../picture/arrow-travel.ts'
import { useBorrowedFocus } from '../picture/borrowed-focus.ts'
import { placeBeside } from '../picture/picture-place.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import { maskOf, withPart } from './mask-gesture.ts'
import { pickedValues } from './picked-values.ts'

/** CSS pixels of an arrow press, plain and with shift (our choice). */
const plainPx = 4
const shiftPx = 40

export function PartPickLayer({ step, index }: { step: Step; index: number }) {
  const workbench = useWorkbench()
  const view = useSession((session) => session.view)
  const { cssOf } = usePlacesOnScreen()
  const layer = useRef<HTMLDivElement>(null)
  const [at, setAt] = useState<Place | null>(view.fit ? { x: 0.5, y: 0.5 } : view.centre)
  const [refusal, setRefusal] = useState('')
  const part = maskOf(step).parts[index]
  const { title } = maskKindById(part.kind)
  useBorrowedFocus(layer)

  const pick = (place: Place | null) => {
    if (!place) return
    const colour = workbench.colourBefore(step.id, place)
    const picked = pickedValues(part, { colour, materialStops: workbench.materialAt(place) })
    if (typeof picked === 'string') return setRefusal(picked)
    workbench.setMask(step.id, withPart(maskOf(step), index, { values: picked }), `${title}: picked`)
    workbench.setTool('pan')
  }
  const placeOf = (event: PointerEvent) => {
    const box = layer.current!.getBoundingClientRect()
    return workbench.placeAt(event.clientX - box.left, event.clientY - box.top)
  }
  const press = (event: KeyboardEvent) => {
    const travel = arrowTravel(event, plainPx, shiftPx)
    if (travel) setAt(placeBeside(workbench, at ?? { x: 0.5, y: 0.5 }, ...travel))
    else if (event.key === 'Enter' || event.key === ' ') pick(at)
    else if (event.key === 'Escape') workbench.setTool('pan')
    else return
    event.preventDefault()
    event.stopPropagation()
  }
  const handlers = {
    onPointerDown: (event: PointerEvent) => event.stopPropagation(),
    onPointerMove(event: PointerEvent) {
      event.stopPropagation()
      setAt(placeOf(event))
    },
    onPointerUp(event: PointerEvent) {
      event.stopPropagation()
      if (event.button === 0) pick(placeOf(event))
    },
    onKeyDown: press,
  }
  const centre = at && cssOf(at)
  return (
    <div
      ref={layer}
      className="brush-layer"
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role -- no element is a picture with keys of its own
      role="application"
      aria-label={`Pick for ${title.toLowerCase()}: arrow keys move, Enter picks, Escape leaves`}
      // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- an application takes keys of its own
      tabIndex={0}
      {...handlers}
    >
      {centre && (
        <svg className="ring" aria-hidden="true">
          {['ring-under', 'ring-line'].map((name) => (
            <g key={name} className={name} transform={`translate(${centre.x} ${centre.y})`}>
              <path d="M-14 0H-4M4 0H14M0 -14V-4M0 4V14" />
            </g>
          ))}
        </svg>
      )}
      {refusal && <output className="ring-label pick-refusal">{refusal}</output>}
    </div>
  )
}
