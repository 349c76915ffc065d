// Tonal balance over the levels of the picture: for each pair of colours a line of what a channel is raised by there, before the level is
// held, with a point in shadows, midtones and highlights to take it up or down by. The amounts stand below as numbers.
import type { LevelSpread } from '../../analysis/level-spread.ts'
import type { Step } from '../../edits/stack.ts'
import type { SliderControl } from '../../operations/define.ts'
import { tonalBalance } from '../../operations/tonal-balance.ts'
import { useGesture } from '../controls/gesture.ts'
import { NumberField } from '../controls/number-field.tsx'
import { spokenLabel } from '../controls/spoken-label.ts'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { LevelBackdrop } from './level-backdrop.tsx'
import { amountAt, amountsOverLevels, levelToAxis, type TonalBorders, tonalPlaces, travelPlace } from './tonal-axis.ts'
import { ToneHandle } from './tone-handle.tsx'
import { useLevelSpread } from './use-level-spread.ts'

const [width, height] = [272, 72]
const keysOfAxes = ['Red', 'Green', 'Blue'].map((axis) =>
  ['shadow', 'midtone', 'highlight'].map((range) => `${range}${axis}` as keyof typeof tonalBalance.controls),
)
function useTonePoint(step: Step, key: keyof typeof tonalBalance.controls) {
  const control: SliderControl = tonalBalance.controls[key]
  const gesture = useGesture(step.id, key, spokenLabel(control))
  return { control, gesture, value: Number(step.values[key] ?? control.initial) }
}

interface ToneLineProps extends StepRoomProps {
  readonly keys: readonly (keyof typeof tonalBalance.controls)[]
  readonly borders: TonalBorders
  readonly spread: LevelSpread | null
}

function ToneLine({ step, keys, borders, spread }: ToneLineProps) {
  const points = [useTonePoint(step, keys[0]), useTonePoint(step, keys[1]), useTonePoint(step, keys[2])]
  const { group, unit, ends, max } = points[0].control
  const places = tonalPlaces(borders)
  const amounts = points.map(({ value }) => value)
  const drawn = amountsOverLevels(amounts, borders)
  const y = (amount: number) => travelPlace(amount, max) * height
  const line = drawn.map((amount, i) => `${((i / (drawn.length - 1)) * width).toFixed(1)} ${y(amount).toFixed(2)}`)
  return (
    <fieldset className="tone-line">
      <legend>
        <span>{group}</span>
        <span className="unit">{unit}</span>
      </legend>
      <div className="tone-line-plot">
        <svg viewBox={`0 0 ${width} ${height}`} preserveAspectRatio="none" aria-hidden="true">
          <LevelBackdrop spread={spread} toAxis={levelToAxis} width={width} height={height} />
          <path className="plot-grid" d={`M0 ${height / 2}H${width}`} />
          {places.borders.map((at, i) => (
            <path key={i} className="plot-grid" d={`M${at * width} 0V${height}`} />
          ))}
          {places.middles.map((at, i) => (
            <path
              key={i}
              className="tone-stem"
              d={`M${at * width} ${y(amounts[i])}V${y(amountAt(at, amounts, borders))}`}
            />
          ))}
          <path className="weight-line" d={`M${line.join('L')}`} />
        </svg>
        <span className="tone-line-end" data-end="high" aria-hidden="true">
          {ends![1]}
        </span>
        <span className="tone-line-end" data-end="low" aria-hidden="true">
          {ends![0]}
        </span>
        {points.map((point, i) => (
          <ToneHandle key={keys[i]} {...point} at={places.middles[i]} />
        ))}
      </div>
      <div className="tone-line-numbers">
        {points.map(({ control, value, gesture }) => (
          <span key={control.label}>
            <span className="control-label">{control.label}</span>
            <NumberField
              label={`${spokenLabel(control)}, typed`}
              value={value}
              decimals={2}
              signed
              step={control.step}
              min={control.min}
              max={control.max}
              onCommit={gesture.set}
            />
          </span>
        ))}
      </div>
    </fieldset>
  )
}

export function ToneLines({ step }: StepRoomProps) {
  const spread = useLevelSpread(step.id)
  const borders = {
    shadowsEndEv: Number(step.values.shadowsEndEv),
    highlightsBeginEv: Number(step.values.highlightsBeginEv),
  }
  return keysOfAxes.map((keys) => <ToneLine key={keys[0]} step={step} keys={keys} borders={borders} spread={spread} />)
}
