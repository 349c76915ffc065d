// A point on the pad that is dragged, or moved by key: arrows by a tenth of a grid line, with shift finely. What is under the
// finger moves, not what lies beside it: the distance at the press stays.
import { useRef, type KeyboardEvent, type PointerEvent } from 'react'

import { gainsText } from '../../edits/gains-text.ts'
import type { NeutralGains } from '../../edits/marks.ts'
import { usePointing } from '../controls/use-pointing.ts'
import type { NameSide } from './name-sides.ts'
import { gridStep, type PadSize, type PlaneView, pointOf, toGrain } from './plane-view.ts'

/** Steps of an arrow key in grid lines, plain and fine (our choice). */
const plainShare = 0.1
const fineShare = 0.01
const directions: Record<string, readonly [red: number, blue: number]> = {
  ArrowLeft: [-1, 0],
  ArrowRight: [1, 0],
  ArrowUp: [0, 1],
  ArrowDown: [0, -1],
}

/** A slider has ends for those who hear it, the plane has none: where the sliders beside it end (our choice). */
const usualStops = 4

/** What a moved point does: many changes, then one end; or cancel, which leaves all as it was. */
interface Move {
  change(gains: NeutralGains): void
  end(): void
  cancel(): void
}

interface PlaneDotProps {
  readonly kind: 'neutral' | 'mark'
  readonly name: string
  /** Where the name is written; absent where it is only spoken. */
  readonly nameSide?: NameSide
  readonly gains: NeutralGains
  readonly view: PlaneView
  readonly size: PadSize
  readonly move: Move
  /** Pointed at or focused, and left again. */
  readonly onPoint?: (isPointed: boolean) => void
  /** Enter or double-click. */
  readonly onAdopt?: () => void
}

export function PlaneDot({ kind, name, nameSide, gains, view, size, move, onPoint, onAdopt }: PlaneDotProps) {
  const drag = useRef<{ x: number; y: number; gains: NeutralGains } | null>(null)
  const { x, y } = pointOf(view, size, gains)
  const isKeyed = useRef(false)
  const pointing = usePointing(
    () => onPoint?.(true),
    // Keys move the point from under the pointer; it is not left by that.
    () => !drag.current && !isKeyed.current && onPoint?.(false),
  )

  const moveBy = (from: NeutralGains, redStops: number, blueStops: number) =>
    move.change(toGrain({ redStops: from.redStops + redStops, blueStops: from.blueStops + blueStops }))

  const press = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return
    event.stopPropagation()
    event.currentTarget.setPointerCapture(event.pointerId)
    isKeyed.current = false
    drag.current = { x: event.clientX, y: event.clientY, gains }
  }
  const carry = (event: PointerEvent<HTMLDivElement>) => {
    if (!drag.current) return
    event.stopPropagation()
    const { x: fromX, y: fromY, gains: from } = drag.current
    const [dx, dy] = [event.clientX - fromX, event.clientY - fromY]
    if (dx !== 0 || dy !== 0) moveBy(from, dx * view.stopsPerPx, -dy * view.stopsPerPx)
  }
  const release = (event: PointerEvent<HTMLDivElement>) => {
    event.stopPropagation()
    drag.current = null
    move.end()
  }

  const giveUp = () => {
    drag.current = null
    move.cancel()
  }

  const keyDown = (event: KeyboardEvent<HTMLDivElement>) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return
    if (directions[event.key]) {
      const [red, blue] = directions[event.key]
      isKeyed.current = true
      const step = gridStep(view) * (event.shiftKey ? fineShare : plainShare)
      moveBy(gains, red * step, blue * step)
    } else if (event.key === 'Enter' && onAdopt) onAdopt()
    else if (event.key === 'Escape') giveUp()
    else return
    event.preventDefault()
    event.stopPropagation()
  }

  return (
    // A native range has one direction only; this point has two, and tells both in its text.
    <div
      className="plane-dot"
      data-kind={kind}
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
      role="slider"
      tabIndex={0}
      aria-roledescription="point on the plane"
      aria-label={name}
      aria-valuenow={gains.redStops}
      aria-valuemin={Math.min(gains.redStops, -usualStops)}
      aria-valuemax={Math.max(gains.redStops, usualStops)}
      aria-valuetext={`${gainsText(gains)} stop`}
      style={{ translate: `${x}px ${y}px` }}
      onPointerDown={press}
      onPointerMove={carry}
      onPointerUp={release}
      onPointerCancel={giveUp}
      {...pointing}
      onFocus={() => onPoint?.(true)}
      onDoubleClick={onAdopt}
      onKeyDown={keyDown}
      onKeyUp={() => !drag.current && move.end()}
      onBlur={() => {
        isKeyed.current = false
        move.end()
        onPoint?.(false)
      }}
    >
      {nameSide && (
        <span className="plane-dot-name" data-side={nameSide}>
          {name}
        </span>
      )}
    </div>
  )
}
