// A ruled scale with an index line, which a press beside it moves there at once; Home and End go to its ends. A value typed
// beyond the travel is shown at the end of the scale.
import type { SliderControl } from '../../operations/define.ts'
import { decimalsOf, formatNumber } from '../../text/format-number.ts'
import type { Gesture } from './gesture.ts'
import { ScaleTicks, shareOf } from './scale-ticks.tsx'
import { spokenLabel } from './spoken-label.ts'
import { useSlide } from './use-slide.ts'

/** Steps that a Page key moves by (our choice). */
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
  const valueText = `${formatNumber(value, decimalsOf(step), min < 0)}${unit && ` ${unit}`}`

  const change = (wanted: number, grain: number) => {
    const low = Math.min(min, value)
    const high = Math.max(max, value)
    const next = Math.min(Math.max(Math.round(wanted / grain) * grain, low), high)
    const rounded = Number(next.toFixed(decimalsOf(grain)))
    if (rounded !== value) gesture.change(rounded)
  }

  const slide = useSlide({
    value,
    initial,
    step,
    pageStep: step * page,
    gesture,
    ownKeys: { Home: () => change(min, step), End: () => change(max, step) },
    perPx: (target) => (max - min) / target.clientWidth,
    change,
    pressed(event) {
      const box = event.currentTarget.getBoundingClientRect()
      const indexX = box.left + shareOf(control, value) * box.width
      const held = Math.abs(event.clientX - indexX) <= holdPx
      return held ? null : min + ((event.clientX - box.left) / box.width) * (max - min)
    },
  })

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
      {...slide}
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
