// The controls of a step in the order of its schema; neighbours of one group stand together under its name.
import type { Control, Operation } from '../../operations/define.ts'
import type { Step } from '../../edits/stack.ts'
import { StepControl } from './step-control.tsx'

interface Part {
  readonly group: string | undefined
  readonly controls: readonly (readonly [key: string, control: Control])[]
}

const groupOf = (control: Control) => (control.kind === 'slider' ? control.group : undefined)

function partsOf(operation: Operation): Part[] {
  const parts: Part[] = []
  for (const entry of Object.entries(operation.controls)) {
    if (entry[1].kind === 'slider' && entry[1].inRoom) continue
    const group = groupOf(entry[1])
    const last = parts.at(-1)
    if (group !== undefined && last?.group === group)
      parts[parts.length - 1] = { group, controls: [...last.controls, entry] }
    else parts.push({ group, controls: [entry] })
  }
  return parts
}

/** The unit that all sliders of a group share, or an empty text. */
function commonUnit({ controls }: Part): string {
  const units = new Set(controls.map(([, control]) => (control.kind === 'slider' ? control.unit : '')))
  return units.size === 1 ? [...units][0] : ''
}

export function ControlList({ step, operation }: { step: Step; operation: Operation }) {
  return partsOf(operation).map((part) => {
    const rows = part.controls.map(([key, control]) => (
      <StepControl
        key={`${step.id} ${key}`}
        operationId={operation.id}
        stepId={step.id}
        controlKey={key}
        control={control}
        value={step.values[key] ?? control.initial}
        isUnitShown={part.group === undefined || commonUnit(part) === ''}
      />
    ))
    if (part.group === undefined) return rows
    return (
      <fieldset key={`${step.id} ${part.group}`} className="control-group">
        <legend>
          <span>{part.group}</span>
          <span className="unit">{commonUnit(part)}</span>
        </legend>
        {rows}
      </fieldset>
    )
  })
}
