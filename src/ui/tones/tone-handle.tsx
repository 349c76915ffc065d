// A point on a tone line: the amount in shadows, midtones or highlights, dragged up and down or stepped by keys.
import type { SliderControl } from '../../operations/define.ts'
import { formatNumber } from '../../text/format-number.ts'
import type { Gesture } from '../controls/gesture.ts'
import { spokenLabel } from '../controls/spoken-label.ts'
import { useSlide } from '../controls/use-slide.ts'
import { travelPlace } from './tonal-axis.ts'

/** Steps that a Page key moves by (our choice). */
const page = 10

interface ToneHandleProps {
  readonly control: SliderControl
  readonly value: number
  readonly gesture: Gesture
  /** Place on the axis of levels, 0…1. */
  readonly at: number
}

export function ToneHandle({ control, value, gesture, at }: ToneHandleProps) {
  const { min, max, step, initial, ends } = control
  const change = (wanted: number, grain: number) => {
    const next = Number(Math.min(Math.max(Math.round(wanted / grain) * grain, min), max).toFixed(3))
    if (next !== value) gesture.change(next)
  }
  const slide = useSlide({
    value,
    initial,
    step,
    pageStep: step * page,
    gesture,
    ownKeys: { Home: () => change(min, step), End: () => change(max, step) },
    isUpright: true,
    perPx: (target) =>
      (max - min) / ((travelPlace(min, max) - travelPlace(max, max)) * target.parentElement!.clientHeight),
    change,
  })
  const towards = value === 0 ? '' : `, towards ${ends![value > 0 ? 1 : 0]}`
  return (
    <span
      className="tone-handle"
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role -- a native range does not stand in a plot
      role="slider"
      tabIndex={0}
      aria-orientation="vertical"
      aria-label={spokenLabel(control)}
      aria-valuemin={min}
      aria-valuemax={max}
      aria-valuenow={value}
      aria-valuetext={`${formatNumber(value, 2, true)} stop${towards}`}
      style={{ left: `${at * 100}%`, top: `${travelPlace(value, max) * 100}%` }}
      {...slide}
    />
  )
}
