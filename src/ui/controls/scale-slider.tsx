// A ruled scale with an index line. Drag or click; arrows, Page keys, Home and End; shift for fine; double-click or Delete
// resets. One drag, or one held key, is one gesture. A value typed beyond the travel is shown at the end of the scale.
import { useRef, type KeyboardEvent, type PointerEvent } from 'react'

import type { SliderControl } from '../../operations/define.ts'
import { decimalsOf, formatNumber } from '../format-number.ts'
import type { Gesture } from './gesture.ts'
import { ScaleTicks, shareOf } from './scale-ticks.tsx'
import { spokenLabel } from './spoken-label.ts'

/** Fine movement is a tenth of the plain one; Page keys move ten steps (our choice). */
const fine = 0.1
const page = 10
/** CSS pixels around the index line in which a press takes hold of it instead of moving it there. */
const holdPx = 9

interface ScaleSliderProps {
  readonly control: SliderControl
  readonly value: number
  readonly gesture: Gesture
}

export function ScaleSlider({ control, value, gesture }: ScaleSliderProps) {
  const { min, max, step, initial, unit } = control
  const drag = useRef<{ x: number; value: number } | null>(null)
  const valueText = `${formatNumber(value, decimalsOf(step), min < 0)}${unit && ` ${unit}`}`

  const change = (wanted: number, grain: number) => {
    const low = Math.min(min, value)
    const high = Math.max(max, value)
    const next = Math.min(Math.max(Math.round(wanted / grain) * grain, low), high)
    const rounded = Number(next.toFixed(decimalsOf(grain)))
    if (rounded !== value) gesture.change(rounded)
  }

  const take = (event: PointerEvent<HTMLDivElement>) => {
    if (event.button !== 0) return
    const box = event.currentTarget.getBoundingClientRect()
    const indexX = box.left + shareOf(control, value) * box.width
    const held = Math.abs(event.clientX - indexX) <= holdPx
    const pressed = held ? value : min + ((event.clientX - box.left) / box.width) * (max - min)
    event.currentTarget.setPointerCapture(event.pointerId)
    drag.current = { x: event.clientX, value: pressed }
    if (!held) change(pressed, step)
  }
  const move = (event: PointerEvent<HTMLDivElement>) => {
    if (!drag.current) return
    const speed = event.shiftKey ? fine : 1
    const travelled = ((event.clientX - drag.current.x) / event.currentTarget.clientWidth) * (max - min) * speed
    drag.current = { x: event.clientX, value: drag.current.value + travelled }
    change(drag.current.value, step * speed)
  }
  const release = () => {
    drag.current = null
    gesture.end()
  }

  const press = (event: KeyboardEvent<HTMLDivElement>) => {
    const size = event.shiftKey ? step * fine : step
    const moves: Record<string, () => void> = {
      ArrowRight: () => change(value + size, size),
      ArrowUp: () => change(value + size, size),
      ArrowLeft: () => change(value - size, size),
      ArrowDown: () => change(value - size, size),
      PageUp: () => change(value + step * page, step),
      PageDown: () => change(value - step * page, step),
      Home: () => change(min, step),
      End: () => change(max, step),
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
    // A native range knows neither fine steps nor values beyond its ends.
    <div
      className="scale-slider"
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role
      role="slider"
      tabIndex={0}
      aria-label={spokenLabel(control)}
      aria-valuemin={Math.min(min, value)}
      aria-valuemax={Math.max(max, value)}
      aria-valuenow={value}
      aria-valuetext={valueText}
      onPointerDown={take}
      onPointerMove={move}
      onPointerUp={release}
      onPointerCancel={release}
      onDoubleClick={() => gesture.set(initial)}
      onKeyDown={press}
      onKeyUp={() => !drag.current && gesture.end()}
      onBlur={gesture.end}
    >
      <ScaleTicks control={control} />
      <span className="scale-line" />
      <span
        className="scale-change"
        style={{
          left: `${Math.min(shareOf(control, value), shareOf(control, initial)) * 100}%`,
          width: `${Math.abs(shareOf(control, value) - shareOf(control, initial)) * 100}%`,
        }}
      />
      <span className="scale-index" style={{ left: `${shareOf(control, value) * 100}%` }} />
    </div>
  )
}
