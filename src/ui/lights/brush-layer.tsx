// The brush on the picture: a pointer paints, arrow keys move it and Enter dabs, Escape puts it away. The stroke under way is drawn
// here; it enters the step, as one change, when it is finished.
import { useRef, useState, type KeyboardEvent, type PointerEvent } from 'react'
import { useStore } from 'zustand'

import { strokesToNumbers } from '../../analysis/two-lights/strokes.ts'
import type { Step } from '../../edits/stack.ts'
import type { Place } from '../../workbench/session.ts'
import { arrowTravel } from '../picture/arrow-travel.ts'
import { useBorrowedFocus } from '../picture/borrowed-focus.ts'
import { placeBeside } from '../picture/picture-place.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import { brush, stepBrushRadius } from './brush-tool.ts'
import { usePlacesOnScreen } from './places-on-screen.ts'

/** Points of a stroke lie this share of its radius apart at least: closer ones change no cell (our choice). */
const leastTravel = 0.3
/** CSS pixels of an arrow press, plain and with shift, as with the probe. */
const plainPx = 8
const shiftPx = 40

const rounded = (value: number) => Number(value.toFixed(4))

export function BrushLayer({ step }: { step: Step }) {
  const workbench = useWorkbench()
  const { light, radius } = useStore(brush)
  const view = useSession((session) => session.view)
  const { cssOf, frameWidthPx } = usePlacesOnScreen()
  const [at, setAt] = useState<Place | null>(view.fit ? { x: 0.5, y: 0.5 } : view.centre)
  const [stroke, setStroke] = useState<readonly Place[]>([])
  const layer = useRef<HTMLDivElement>(null)
  const radiusPx = radius * frameWidthPx

  useBorrowedFocus(layer)

  const placeOf = (event: PointerEvent) => {
    const box = layer.current!.getBoundingClientRect()
    return workbench.placeAt(event.clientX - box.left, event.clientY - box.top)
  }
  const finish = (places: readonly Place[]) => {
    setStroke([])
    if (places.length === 0) return
    const points = places.map(({ x, y }) => [rounded(x), rounded(y)] as const)
    const before = (step.values.strokes ?? []) as readonly number[]
    const strokes = [...before, ...strokesToNumbers([{ points, radius: rounded(radius), light }])]
    workbench.setValues(step.id, { strokes }, light === 'shade' ? 'Paint shade' : 'Paint sun')
  }
  const move = (event: PointerEvent) => {
    const place = placeOf(event)
    setAt(place)
    const last = stroke.at(-1)
    if (!place || !last) return
    const [from, to] = [cssOf(last), cssOf(place)]
    if (from && to && Math.hypot(to.x - from.x, to.y - from.y) > leastTravel * radiusPx) setStroke([...stroke, place])
  }
  const press = (event: KeyboardEvent) => {
    const travel = arrowTravel(event, plainPx, shiftPx)
    if (travel) setAt(placeBeside(workbench, at ?? { x: 0.5, y: 0.5 }, ...travel))
    else if (event.key === 'Enter' || event.key === ' ') finish(at ? [at] : [])
    else if (event.key === 'Escape' && stroke.length > 0) setStroke([])
    else if (event.key === 'Escape') workbench.setTool('pan')
    else if (event.key === ',' || event.key === '.') stepBrushRadius(event.key === '.' ? 1 : -1)
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  const handlers = {
    onPointerDown(event: PointerEvent) {
      event.stopPropagation()
      const place = placeOf(event)
      if (event.button !== 0 || !place) return
      event.currentTarget.setPointerCapture(event.pointerId)
      // A second finger means to move the picture, not to paint.
      setStroke(event.isPrimary ? [place] : [])
    },
    onPointerMove(event: PointerEvent) {
      event.stopPropagation()
      move(event)
    },
    onPointerUp(event: PointerEvent) {
      event.stopPropagation()
      finish(stroke)
    },
    onPointerCancel: () => setStroke([]),
    onPointerLeave: () => setAt(null),
    onKeyDown: press,
  }
  const centre = at && cssOf(at)
  const line = stroke.map(cssOf).filter((point) => point !== null)
  return (
    <div
      ref={layer}
      className="brush-layer"
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role -- no element is a drawing surface with keys of its own
      role="application"
      aria-label={`Brush that paints ${light}: arrow keys move it, Enter dabs, comma and full stop change its width, Escape puts it away`}
      // oxlint-disable-next-line jsx-a11y/no-noninteractive-tabindex -- an application takes keys of its own
      tabIndex={0}
      {...handlers}
    >
      <svg className="ring" aria-hidden="true">
        {line.length > 0 && (
          <polyline
            className="brush-stroke"
            data-light={light}
            points={[...line, ...(line.length === 1 ? line : [])].map(({ x, y }) => `${x},${y}`).join(' ')}
            strokeWidth={2 * radiusPx}
          />
        )}
        {centre &&
          ['ring-under', 'ring-line'].map((name) => (
            <g key={name} className={name} transform={`translate(${centre.x} ${centre.y})`}>
              <circle r={radiusPx} />
              <path d={light === 'shade' ? 'M-4 0H4M0 -4V4' : 'M-4 0H4'} />
            </g>
          ))}
      </svg>
    </div>
  )
}
