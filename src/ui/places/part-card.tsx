// One place of a step: its name, how it joins those before it, and, while it is open, its controls.
import { ChevronRight, X } from 'lucide-react'
import { useStore } from 'zustand'
import { Button } from 'react-aria-components/Button'
import { Switch } from 'react-aria-components/Switch'

import type { Step } from '../../edits/stack.ts'
import type { SliderControl } from '../../operations/define.ts'
import { type Combine, maskKindById, type MaskPart } from '../../operations/masks/mask.ts'
import { ChoiceList } from '../controls/choice-list.tsx'
import { SliderRow } from '../controls/slider-row.tsx'
import { IconButton } from '../icon-button.tsx'
import { useStepTool } from '../step-tool.ts'
import { useWorkbench } from '../workbench-context.tsx'
import { maskOf, useMaskGesture, withPart } from './mask-gesture.ts'
import { isPickable } from './picked-values.ts'
import { openPart, placesTool } from './places-tool.ts'

interface PartProps {
  readonly step: Step
  readonly part: MaskPart
  readonly index: number
}

const ways: readonly { readonly value: Combine; readonly label: string }[] = [
  { value: 'or', label: 'Also there' },
  { value: 'and', label: 'Only there' },
  { value: 'not', label: 'Not there' },
]

function PartSlider({ step, part, index, name, control }: PartProps & { name: string; control: SliderControl }) {
  const title = maskKindById(part.kind).title
  const gesture = useMaskGesture(step.id, `${title}: ${control.label.toLowerCase()}`, (value) =>
    withPart(maskOf(step), index, { values: { ...part.values, [name]: value } }),
  )
  return <SliderRow control={control} value={Number(part.values[name])} gesture={gesture} />
}

function PartControls({ step, part, index }: PartProps) {
  const workbench = useWorkbench()
  const { isOut: picking, toggle } = useStepTool('place pick')
  const { title, controls } = maskKindById(part.kind)
  const set = (change: Partial<MaskPart>, name: string) =>
    workbench.setMask(step.id, withPart(maskOf(step), index, change), name)
  return (
    <div className="part-controls">
      {index > 0 && (
        <ChoiceList
          label="Acts"
          options={ways}
          value={part.combine}
          onChange={(combine) => set({ combine: combine as Combine }, `${title}: joined`)}
        />
      )}
      {isPickable(part) && (
        <Button className="button wide" aria-pressed={picking} onPress={toggle}>
          {picking ? 'Point at it in the picture' : 'Pick in the picture'}
        </Button>
      )}
      {Object.entries(controls).map(
        ([name, control]) =>
          control.kind === 'slider' && (
            <PartSlider key={name} step={step} part={part} index={index} name={name} control={control} />
          ),
      )}
      <Switch
        className="switch-row"
        isSelected={part.inverted}
        onChange={(inverted) => set({ inverted }, `${title}: inverted`)}
      >
        <span className="control-label">Inverted</span>
        <span className="switch-state">{part.inverted ? 'on' : 'off'}</span>
        <span className="lamp" />
      </Switch>
    </div>
  )
}

export function PartCard({ step, part, index }: PartProps) {
  const workbench = useWorkbench()
  const isOpen = useStore(placesTool, ({ stepId, open }) => stepId === step.id && open === index)
  const { title } = maskKindById(part.kind)
  const way = index > 0 ? ways.find(({ value }) => value === part.combine)!.label.toLowerCase() : ''
  const remove = () => {
    const mask = maskOf(step)
    openPart(step.id, null)
    workbench.setMask(step.id, { ...mask, parts: mask.parts.toSpliced(index, 1) }, `Remove ${title.toLowerCase()}`)
  }
  return (
    <li className="part-card" data-open={isOpen || undefined}>
      <div className="part-head">
        <button
          type="button"
          className="part-name"
          aria-expanded={isOpen}
          onClick={() => openPart(step.id, isOpen ? null : index)}
        >
          <ChevronRight aria-hidden="true" />
          <span>{title}</span>
          <span className="part-way">{[way, part.inverted && 'inverted'].filter(Boolean).join(', ')}</span>
        </button>
        <IconButton label={`Remove ${title.toLowerCase()}`} onPress={remove}>
          <X />
        </IconButton>
      </div>
      {isOpen && <PartControls step={step} part={part} index={index} />}
    </li>
  )
}
