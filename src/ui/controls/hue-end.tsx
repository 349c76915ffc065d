// One end of a band's thread, on the upper rail its hue, on the lower what becomes of it. Drag; arrows, Page keys; shift for fine;
// double-click or Delete resets.
import { useRef, type KeyboardEvent, type PointerEvent } from 'react'

import { type HueBand, wholeTurnDeg } from '../../operations/hue-bands.ts'
import { formatNumber } from '../format-number.ts'
import type { Gesture } from './gesture.ts'

/** Fine movement is a tenth of the plain one; Page keys go fifteen degrees (our choice). */
const fine = 0.1
const pageDeg = 15

interface HueEndProps {
  readonly number: number
  readonly band: HueBand
  readonly end: 'hueDeg' | 'turnDeg'
  readonly chosen: boolean
  readonly initial: number
  readonly gesture: Gesture
  readonly onChoose: () => void
}

export function HueEnd({ number, band, end, chosen, initial, gesture, onChoose }: HueEndProps) {
  const drag = useRef<{ x: number; value: number } | null>(null)
  const value = band[end]
  const isTurn = end === 'turnDeg'
  const hueDeg = wholeTurnDeg(isTurn ? band.hueDeg + band.turnDeg : band.hueDeg)
  const valueText = isTurn
    ? `turned by ${formatNumber(value, 0, true)}°, to ${formatNumber(hueDeg, 0)}°`
    : `${formatNumber(hueDeg, 0)}°`
  const change = (wanted: number) => {
    const rounded = Math.round(wanted * 10) / 10
    if (rounded !== value) gesture.change(rounded)
  }

  const take = (event: PointerEvent<HTMLElement>) => {
    if (event.button !== 0) return
    event.currentTarget.setPointerCapture(event.pointerId)
    drag.current = { x: event.clientX, value }
    onChoose()
  }
  const move = (event: PointerEvent<HTMLElement>) => {
    if (!drag.current) return
    const perPx = 360 / event.currentTarget.parentElement!.clientWidth
    const travelled = (event.clientX - drag.current.x) * perPx * (event.shiftKey ? fine : 1)
    drag.current = { x: event.clientX, value: drag.current.value + travelled }
    change(drag.current.value)
  }
  const release = () => {
    drag.current = null
    gesture.end()
  }
  const press = (event: KeyboardEvent<HTMLElement>) => {
    const size = event.shiftKey ? fine : 1
    const moves: Record<string, () => void> = {
      ArrowRight: () => change(value + size),
      ArrowUp: () => change(value + size),
      ArrowLeft: () => change(value - size),
      ArrowDown: () => change(value - size),
      PageUp: () => change(value + pageDeg),
      PageDown: () => change(value - pageDeg),
      Delete: () => gesture.set(initial),
    }
    if (event.key === 'Escape' && drag.current) {
      drag.current = null
      gesture.cancel()
    } else if (!moves[event.key] || event.ctrlKey || event.metaKey || event.altKey) return
    else moves[event.key]()
    event.preventDefault()
    event.stopPropagation()
  }

  return (
    <span
      className={isTurn ? 'hue-end turned' : 'hue-end'}
      data-chosen={chosen || undefined}
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role -- a native range has no ends to join
      role="slider"
      tabIndex={0}
      aria-label={isTurn ? `Band ${number}, what becomes of it` : `Band ${number}, its hue`}
      aria-valuemin={isTurn ? -180 : 0}
      aria-valuemax={isTurn ? 180 : 360}
      aria-valuenow={value}
      aria-valuetext={valueText}
      style={{ left: `${(hueDeg / 360) * 100}%` }}
      onFocus={onChoose}
      onPointerDown={take}
      onPointerMove={move}
      onPointerUp={release}
      onPointerCancel={release}
      onDoubleClick={() => gesture.set(initial)}
      onKeyDown={press}
      onKeyUp={() => !drag.current && gesture.end()}
      onBlur={gesture.end}
    >
      {isTurn ? '' : number}
    </span>
  )
}
