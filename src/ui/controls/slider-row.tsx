// A slider with its name and a number that can be typed; one of a group takes one line.
import type { SliderControl } from '../../operations/define.ts'
import { decimalsOf } from '../../text/format-number.ts'
import type { Gesture } from './gesture.ts'
import { NumberField } from './number-field.tsx'
import { ScaleSlider } from './scale-slider.tsx'
import { spokenLabel } from './spoken-label.ts'

interface SliderRowProps {
  readonly control: SliderControl
  readonly value: number
  readonly gesture: Gesture
  /** False where the unit stands over a whole group. */
  readonly isUnitShown?: boolean
}

export function SliderRow({ control, value, gesture, isUnitShown = true }: SliderRowProps) {
  const bounds = control.bounded ? { min: control.min, max: control.max } : {}
  return (
    <div className={control.group === undefined ? 'slider-row' : 'slider-line'}>
      <span className="control-label" onDoubleClick={() => gesture.set(control.initial)}>
        {control.label}
      </span>
      <span className="slider-number">
        <NumberField
          label={`${spokenLabel(control)}, typed`}
          value={value}
          decimals={decimalsOf(control.step)}
          signed={control.min < 0}
          step={control.step}
          {...bounds}
          onCommit={gesture.set}
        />
        {isUnitShown && <span className="unit">{control.unit}</span>}
      </span>
      <ScaleSlider control={control} value={value} gesture={gesture} />
    </div>
  )
}
