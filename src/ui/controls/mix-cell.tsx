// One weight of a channel mix: its number, and a bar from 0 to either side.
import { useRef } from 'react'

import type { Mat3 } from '../../math/mat3.ts'
import type { SliderControl } from '../../operations/define.ts'
import type { Gesture } from './gesture.ts'
import { NumberField } from './number-field.tsx'
import { ScaleSlider } from './scale-slider.tsx'

interface MixCellProps {
  readonly label: string
  readonly weight: number
  readonly mix: Mat3
  /** The gesture on the whole mix. */
  readonly gesture: Gesture
  /** A mix with this weight in it. */
  readonly withWeight: (mix: Mat3, weight: number) => Mat3
}

/** Bars reach one and a half times a channel to either side; more can be typed (our choice). */
const scale: Omit<SliderControl, 'label'> = {
  kind: 'slider',
  unit: '',
  min: -1.5,
  max: 1.5,
  step: 0.05,
  initial: 0,
  bounded: false,
}

export function MixCell({ label, weight, mix, gesture, withWeight }: MixCellProps) {
  /** The mix when a drag began: the others' shares are taken from it, not from what the drag left behind. */
  const start = useRef<Mat3 | null>(null)
  const ofWeight: Gesture = {
    change(next) {
      start.current ??= mix
      gesture.change(withWeight(start.current, next as number))
    },
    set: (next) => gesture.set(withWeight(mix, next as number)),
    end() {
      start.current = null
      gesture.end()
    },
    cancel() {
      start.current = null
      gesture.cancel()
    },
  }
  return (
    <td className="mix-cell">
      <NumberField
        label={`${label}, typed`}
        value={weight}
        decimals={2}
        step={scale.step}
        onCommit={(next) => ofWeight.set(next)}
      />
      <ScaleSlider control={{ ...scale, label }} value={weight} gesture={ofWeight} />
    </td>
  )
}
