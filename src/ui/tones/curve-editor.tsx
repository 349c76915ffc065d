// The tone curve over the histogram of what enters the step. A press on the plot sets a point and takes hold of it; every
// point is a slider of its own for the keys: arrows move it, Insert or Enter adds one to its right, Delete takes it away.
import { useRef, type KeyboardEvent, type PointerEvent } from 'react'

import type { Step } from '../../edits/stack.ts'
import { addPoint, curveOf, movePoint, pointsOf, removePoint, type CurvePoint } from '../../operations/curve-points.ts'
import { useGesture } from '../controls/gesture.ts'
import type { NumbersEditorProps } from '../controls/numbers-editor-props.ts'
import { useChain } from '../chain/selected-step.ts'
import { formatNumber } from '../../text/format-number.ts'
import { LevelBackdrop } from './level-backdrop.tsx'
import { curveAxis } from '../../operations/tone-curve.ts'
import { useLevelSpread } from './use-level-spread.ts'

/** Size of the plot in units of its drawing. */
const [plotWidth, plotHeight] = [272, 176]
/** Share of the axis one arrow press moves; with shift a fifth of it (our choice). */
const keyStep = 0.01
const fineStep = 0.002
/** CSS pixels around a point in which a press takes hold of it. */
const holdPx = 14

const percent = (share: number) => `${formatNumber(share * 100, 1)} %`

/** The curve as an SVG path, sampled finely enough for the eye. */
function curvePath(numbers: readonly number[]): string {
  const curve = curveOf(numbers)
  const steps = 96
  const at = (i: number) => `${(i / steps) * plotWidth} ${(1 - curve.at(i / steps)) * plotHeight}`
  return `M${Array.from({ length: steps + 1 }, (_, i) => at(i)).join('L')}`
}

/** The axis of the curve lies between the step's black and white point. */
function axisOf(step: Step | undefined): (level: number) => number {
  return curveAxis({
    blackPercent: Number(step?.values.blackPercent ?? 0),
    whiteEv: Number(step?.values.whiteEv ?? 0),
  })
}

const arrows: Record<string, readonly [number, number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

export function CurveEditor({ stepId, controlKey, numbers }: NumbersEditorProps) {
  const plot = useRef<SVGSVGElement>(null)
  const held = useRef<number | null>(null)
  const gesture = useGesture(stepId, controlKey, 'Tone curve')
  const points = pointsOf(numbers)
  const toAxis = axisOf(useChain().find((step) => step.id === stepId))
  const spread = useLevelSpread(stepId)

  const placeOf = (event: PointerEvent): CurvePoint => {
    const box = plot.current!.getBoundingClientRect()
    return [(event.clientX - box.left) / box.width, 1 - (event.clientY - box.top) / box.height]
  }
  const focusPoint = (index: number) => {
    // The point may not stand yet: it does after this change is drawn.
    requestAnimationFrame(() => plot.current?.querySelectorAll<SVGGElement>('.curve-point')[index]?.focus())
  }

  const take = (event: PointerEvent<SVGSVGElement>) => {
    if (event.button !== 0) return
    const [x, y] = placeOf(event)
    const box = plot.current!.getBoundingClientRect()
    const distance = ([px, py]: CurvePoint) => Math.hypot((px - x) * box.width, (py - y) * box.height)
    const nearest = points.reduce((best, point, i) => (distance(point) < distance(points[best]) ? i : best), 0)
    event.currentTarget.setPointerCapture(event.pointerId)
    if (distance(points[nearest]) <= holdPx) held.current = nearest
    else {
      const added = addPoint(numbers, x)
      if (!added) return
      held.current = added.index
      gesture.change(movePoint(added.numbers, added.index, [x, y]))
    }
    focusPoint(held.current)
    event.preventDefault()
  }
  const drag = (event: PointerEvent) => {
    if (held.current !== null) gesture.change(movePoint(numbers, held.current, placeOf(event)))
  }
  const release = () => {
    held.current = null
    gesture.end()
  }
  const giveUp = () => {
    held.current = null
    gesture.cancel()
  }

  const takeAway = (index: number) => {
    const left = removePoint(numbers, index)
    if (left.length < numbers.length) gesture.set(left)
  }
  const press = (event: KeyboardEvent, index: number) => {
    const [x, y] = points[index]
    const arrow = arrows[event.key]
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (arrow) {
      const size = event.shiftKey ? fineStep : keyStep
      gesture.change(movePoint(numbers, index, [x + arrow[0] * size, y + arrow[1] * size]))
    } else if (event.key === 'Delete' || event.key === 'Backspace') {
      takeAway(index)
      focusPoint(Math.max(index - 1, 0))
    } else if (event.key === 'Insert' || event.key === 'Enter') {
      const [left, right] = index < points.length - 1 ? [index, index + 1] : [index - 1, index]
      const added = addPoint(numbers, (points[left][0] + points[right][0]) / 2)
      if (added) {
        gesture.set(added.numbers)
        focusPoint(added.index)
      }
    } else if (event.key === 'Escape' && held.current !== null) giveUp()
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  return (
    <fieldset className="curve-editor" aria-label="Tone curve">
      <svg
        ref={plot}
        className="tone-plot"
        viewBox={`0 0 ${plotWidth} ${plotHeight}`}
        onPointerDown={take}
        onPointerMove={drag}
        onPointerUp={release}
        onPointerCancel={giveUp}
      >
        <LevelBackdrop spread={spread} toAxis={toAxis} width={plotWidth} height={plotHeight} />
        {[0.25, 0.5, 0.75].map((share) => (
          <g key={share} className="plot-grid">
            <line x1={share * plotWidth} x2={share * plotWidth} y1={0} y2={plotHeight} />
            <line x1={0} x2={plotWidth} y1={share * plotHeight} y2={share * plotHeight} />
          </g>
        ))}
        <line className="curve-straight" x1={0} y1={plotHeight} x2={plotWidth} y2={0} />
        <path className="curve-under" d={curvePath(numbers)} />
        <path className="curve-line" d={curvePath(numbers)} />
        {points.map(([x, y], i) => (
          <g
            // The points are told apart by their order alone.
            // oxlint-disable-next-line react/no-array-index-key
            key={i}
            className="curve-point"
            transform={`translate(${x * plotWidth} ${(1 - y) * plotHeight})`}
            // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role -- a native range moves one way only
            role="slider"
            tabIndex={0}
            aria-label={`Point ${i + 1} of ${points.length}`}
            aria-valuemin={0}
            aria-valuemax={100}
            aria-valuenow={Math.round(y * 100)}
            aria-valuetext={`${percent(x)} becomes ${percent(y)}`}
            onKeyDown={(event) => press(event, i)}
            onKeyUp={() => held.current === null && gesture.end()}
            onBlur={gesture.end}
            onDoubleClick={() => takeAway(i)}
          >
            <circle className="curve-hold" r={holdPx} />
            <circle className="curve-dot" r={4} />
          </g>
        ))}
      </svg>
      <p className="control-note">
        Level in, left to right; level out, upwards. Press to set a point, Delete takes it away.
      </p>
    </fieldset>
  )
}
