// Two sliders of the finished picture: right is warmer, or more magenta, whatever the chain exchanges, turns or maps on its way.
import type { SliderControl } from '../../operations/define.ts'
import type { NeutralOutlook, SeenShift } from '../../workbench/neutral-outlook.ts'
import { NumberField } from '../controls/number-field.tsx'
import { ScaleSlider } from '../controls/scale-slider.tsx'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { useSeenShift } from './seen-shift.ts'
import { useOutlook } from './use-outlook.ts'

/** Travel of both sliders in thousandths of chroma per lightness; typed values go beyond (our choice). */
const travel = 150
const slider = (label: string): SliderControl => {
  return { kind: 'slider', label, unit: '', min: -travel, max: travel, step: 1, initial: 0, bounded: false }
}

/** `label` is what stands beside the slider, the slider's own what is spoken and what undo names. */
const axes: readonly { axis: keyof SeenShift; label: string; control: SliderControl }[] = [
  { axis: 'warm', label: 'Cool to warm', control: slider('Warmth as seen') },
  { axis: 'magenta', label: 'Green to magenta', control: slider('Green to magenta as seen') },
]

function SeenSliders({ step, outlook }: StepRoomProps & { outlook: NeutralOutlook }) {
  const { shift, stoppedAt, gesture } = useSeenShift(step, outlook)
  return (
    <section className="seen" aria-labelledby="seen-title">
      <h3 id="seen-title">As seen in the finished picture</h3>
      {axes.map(({ axis, label, control }) => {
        const move = gesture(axis, control.label)
        return (
          <div key={axis} className="slider-row">
            <span className="control-label" onDoubleClick={() => move.set(0)}>
              {label}
            </span>
            <span className="slider-number">
              <NumberField
                label={`${control.label}, typed`}
                value={shift[axis]}
                decimals={0}
                signed
                step={control.step}
                onCommit={move.set}
              />
              <span className="unit" />
            </span>
            <ScaleSlider control={control} value={shift[axis]} gesture={move} />
          </div>
        )
      })}
      <output className="seen-stop">
        {stoppedAt && 'The rest of the chain shows no more of it: this is the last that can be reached.'}
      </output>
      <p className="control-note">0 is the neutral as it was picked.</p>
    </section>
  )
}

export function AsSeen({ step }: StepRoomProps) {
  const outlook = useOutlook()
  return outlook && <SeenSliders step={step} outlook={outlook} />
}
