// The brush for the shade: towards shade or towards sun, its width, and the strokes so far.
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'
import { useStore } from 'zustand'

import { strokesOfNumbers, strokesToNumbers } from '../../analysis/two-lights/strokes.ts'
import type { PickedLight } from '../../edits/light-picks.ts'
import { slider } from '../../operations/controls.ts'
import type { Step } from '../../edits/stack.ts'
import { NumberField } from '../controls/number-field.tsx'
import { ScaleSlider } from '../controls/scale-slider.tsx'
import { useStepTool } from '../step-tool.ts'
import { useWorkbench } from '../workbench-context.tsx'
import { brush, largestRadius, setBrushLight, setBrushRadius } from './brush-tool.ts'

/** Width of the brush in per cent of the frame's. */
const widthControl = slider('Brush width', '% of the frame', 1, largestRadius * 200, 1, 6, { bounded: true })
const lights: readonly (readonly [light: PickedLight, label: string])[] = [
  ['shade', 'Paint shade'],
  ['sun', 'Paint sun'],
]

function BrushWidth() {
  const percent = useStore(brush, ({ radius }) => radius) * 200
  const set = (value: unknown) => setBrushRadius(Number(value) / 200)
  return (
    <div className="slider-row">
      <span className="control-label">{widthControl.label}</span>
      <span className="slider-number">
        <NumberField
          label={`${widthControl.label}, typed`}
          value={percent}
          decimals={1}
          step={1}
          min={widthControl.min}
          max={widthControl.max}
          onCommit={set}
        />
        <span className="unit">{widthControl.unit}</span>
      </span>
      <ScaleSlider control={widthControl} value={percent} gesture={{ change: set, set, end() {}, cancel() {} }} />
    </div>
  )
}

export function ShadeBrush({ step }: { step: Step }) {
  const workbench = useWorkbench()
  const { light } = useStore(brush)
  const { isOut, toggle } = useStepTool('brush')
  const strokes = strokesOfNumbers((step.values.strokes ?? []) as readonly number[])

  const press = (wanted: PickedLight) => {
    if (!isOut || light === wanted) toggle()
    setBrushLight(wanted)
  }
  const keep = (count: number, name: string) =>
    workbench.setValues(step.id, { strokes: strokesToNumbers(strokes.slice(0, count)) }, name)

  return (
    <div className="shade-brush">
      <Group className="button-pair" aria-label="Brush">
        {lights.map(([wanted, label]) => (
          <Button
            key={wanted}
            className="button"
            aria-pressed={isOut && light === wanted}
            onPress={() => press(wanted)}
          >
            {label}
          </Button>
        ))}
      </Group>
      {isOut && <BrushWidth />}
      {strokes.length > 0 && (
        <div className="stroke-count">
          <span className="control-label">
            {strokes.length} {strokes.length === 1 ? 'stroke' : 'strokes'}
          </span>
          <Button className="button quiet" onPress={() => keep(strokes.length - 1, 'Take a stroke back')}>
            Take one back
          </Button>
          <Button className="button quiet" onPress={() => keep(0, 'Remove all strokes')}>
            Remove all
          </Button>
        </div>
      )}
    </div>
  )
}
