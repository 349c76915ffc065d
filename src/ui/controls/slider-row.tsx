// A slider with its name and a number that can be typed.
import type { SliderControl } from '../../operations/define.ts'
import { decimalsOf } from '../format-number.ts'
import type { Gesture } from './gesture.ts'
import { NumberField } from './number-field.tsx'
import { ScaleSlider } from './scale-slider.tsx'

interface SliderRowProps {
  readonly control: SliderControl
  readonly value: number
  readonly gesture: Gesture
}

export function SliderRow({ control, value, gesture }: SliderRowProps) {
  const bounds = control.bounded ? { min: control.min, max: control.max } : {}
  return (
    <div className="slider-row">
      <span className="control-label" onDoubleClick={() => gesture.set(control.initial)}>
        {control.label}
      </span>
      <span className="slider-number">
        <NumberField
          label={`${control.label}, typed`}
          value={value}
          decimals={decimalsOf(control.step)}
          signed={control.min < 0}
          step={control.step}
          {...bounds}
          onCommit={gesture.set}
        />
        <span className="unit">{control.unit}</span>
      </span>
      <ScaleSlider control={control} value={value} gesture={gesture} />
    </div>
  )
}
