// Where a step acts: everywhere, or in places put together one after the other, at a strength.
import { Plus } from 'lucide-react'
import { Button } from 'react-aria-components/Button'
import { Menu, MenuItem, MenuTrigger } from 'react-aria-components/Menu'
import { Popover } from 'react-aria-components/Popover'
import { Switch } from 'react-aria-components/Switch'
import { useEffect } from 'react'

import type { Step } from '../../edits/stack.ts'
import { slider } from '../../operations/controls.ts'
import { makePart, maskKindById, maskKinds, mostParts } from '../../operations/masks/mask.ts'
import { startValues, tellsMaterials } from '../../operations/masks/start-values.ts'
import { SliderRow } from '../controls/slider-row.tsx'
import { ReachSwitch } from '../lights/reach-switch.tsx'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import { maskOf, useMaskGesture } from './mask-gesture.ts'
import { OwnStepOffer } from './own-step-offer.tsx'
import { PartCard } from './part-card.tsx'
import { openPart } from './places-tool.ts'

const strengthControl = slider('Acts by', '%', 0, 100, 1, 100, { bounded: true })

function Strength({ step }: { step: Step }) {
  const mask = maskOf(step)
  const gesture = useMaskGesture(step.id, 'How much it acts', (value) => ({ ...mask, strength: Number(value) / 100 }))
  return <SliderRow control={strengthControl} value={mask.strength * 100} gesture={gesture} />
}

function AddPlace({ step }: { step: Step }) {
  const workbench = useWorkbench()
  const filterNm = useSession(({ shown }) => shown?.facts.filterNm)
  const mask = maskOf(step)
  const kinds = maskKinds.filter(({ readsMaterial }) => !readsMaterial || tellsMaterials(filterNm))
  const add = (kind: string) => {
    const part = makePart(kind, startValues(kind, filterNm))
    const name = `Add ${maskKindById(kind).title.toLowerCase()}`
    workbench.setMask(step.id, { ...mask, parts: [...mask.parts, part] }, name)
    openPart(step.id, mask.parts.length)
  }
  return (
    <>
      <MenuTrigger>
        <Button className="button add-place" isDisabled={mask.parts.length >= mostParts}>
          <Plus aria-hidden="true" />
          {mask.parts.length === 0 ? 'Act only in a place' : 'Add a place'}
        </Button>
        <Popover className="popover" placement="bottom start">
          <Menu className="list" aria-label="Kind of place" onAction={(key) => add(String(key))}>
            {kinds.map(({ id, title }) => (
              <MenuItem key={id} id={id} className="list-item">
                {title}
              </MenuItem>
            ))}
          </Menu>
        </Popover>
      </MenuTrigger>
      {kinds.length < maskKinds.length && (
        <p className="control-note">This filter leaves too little colour to tell foliage and sky apart.</p>
      )}
    </>
  )
}

export function WhereSection({ step }: { step: Step }) {
  const workbench = useWorkbench()
  const mask = maskOf(step)
  const hasParts = mask.parts.length > 0
  useEffect(() => () => openPart('', null), [])

  return (
    <section className="where" aria-labelledby={`${step.id}-where`}>
      <h3 id={`${step.id}-where`}>Where</h3>
      {hasParts && (
        <ol className="part-list">
          {mask.parts.map((part, index) => (
            // Parts have no identity but their place in the list.
            // oxlint-disable-next-line react/no-array-index-key
            <PartCard key={index} step={step} part={part} index={index} />
          ))}
        </ol>
      )}
      <OwnStepOffer step={step} />
      <AddPlace step={step} />
      {hasParts && (
        <>
          <Switch
            className="switch-row"
            isSelected={mask.inverted}
            onChange={(inverted) => workbench.setMask(step.id, { ...mask, inverted }, 'Everywhere else instead')}
          >
            <span className="control-label">Everywhere else instead</span>
            <span className="switch-state">{mask.inverted ? 'on' : 'off'}</span>
            <span className="lamp" />
          </Switch>
          <ReachSwitch stepId={step.id} label="Show where it acts" />
        </>
      )}
      <Strength step={step} />
    </section>
  )
}
