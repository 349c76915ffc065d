// One control of a step, made from its schema.
import { Switch } from 'react-aria-components/Switch'

import type { ChoiceControl, Control, ControlValue, SliderControl, ToggleControl } from '../../operations/define.ts'
import { ChoiceList } from './choice-list.tsx'
import { useGesture } from './gesture.ts'
import { numbersEditors } from './numbers-editors.ts'
import { SliderRow } from './slider-row.tsx'
import { spokenLabel } from './spoken-label.ts'

interface ControlProps<C extends Control> {
  readonly operationId: string
  readonly stepId: string
  readonly controlKey: string
  readonly control: C
  readonly value: ControlValue
  /** False where the unit stands over a whole group. */
  readonly isUnitShown?: boolean
}

function StepSlider({ stepId, controlKey, control, value, isUnitShown }: ControlProps<SliderControl>) {
  const gesture = useGesture(stepId, controlKey, spokenLabel(control))
  return <SliderRow control={control} value={value as number} gesture={gesture} isUnitShown={isUnitShown} />
}

function ToggleRow({ stepId, controlKey, control, value }: ControlProps<ToggleControl>) {
  const gesture = useGesture(stepId, controlKey, control.label)
  return (
    <Switch className="switch-row" isSelected={value === true} onChange={gesture.set}>
      <span className="control-label">{control.label}</span>
      <span className="switch-state">{value === true ? 'on' : 'off'}</span>
      <span className="lamp" />
    </Switch>
  )
}

function ChoiceRow({ stepId, controlKey, control, value }: ControlProps<ChoiceControl>) {
  const gesture = useGesture(stepId, controlKey, control.label)
  return <ChoiceList label={control.label} options={control.options} value={String(value)} onChange={gesture.set} />
}

export function StepControl(props: ControlProps<Control>) {
  const { operationId, stepId, controlKey, control, value } = props
  switch (control.kind) {
    case 'slider':
      return <StepSlider {...props} control={control} />
    case 'toggle':
      return <ToggleRow {...props} control={control} />
    case 'choice':
      return <ChoiceRow {...props} control={control} />
    case 'numbers': {
      const Editor = numbersEditors[`${operationId} ${controlKey}`]
      return Editor && <Editor stepId={stepId} controlKey={controlKey} numbers={value as readonly number[]} />
    }
    case 'text':
      return null
  }
}
