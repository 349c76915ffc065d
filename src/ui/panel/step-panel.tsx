// The selected step: what may be done to it as a whole, then its controls.
import { useEffect, useRef } from 'react'
import { Button } from 'react-aria-components/Button'
import { Group } from 'react-aria-components/Group'
import { Switch } from 'react-aria-components/Switch'

import { isFree, isRemovable } from '../../edits/stack.ts'
import { mayStandAt, useChain, useSelectedStep } from '../chain/selected-step.ts'
import { ControlList } from '../controls/control-list.tsx'
import { WhereSection } from '../places/where-section.tsx'
import { stepRooms } from './step-rooms.ts'
import { useWorkbench } from '../workbench-context.tsx'

export function StepPanel() {
  const workbench = useWorkbench()
  const chain = useChain()
  const selected = useSelectedStep()
  const section = useRef<HTMLElement>(null)
  const selectedId = selected?.step.id
  useEffect(() => {
    if (selectedId === undefined) return
    // The button that led here may have gone with the step before: keys go on from the new one's head.
    if (document.activeElement === document.body) section.current?.focus({ preventScroll: true })
    // With the next frame, which lays out the page anyway.
    const scheduled = requestAnimationFrame(() => section.current?.closest('.panel')?.scrollTo({ top: 0 }))
    return () => cancelAnimationFrame(scheduled)
  }, [selectedId])
  if (chain.length === 0) return null
  if (!selected) return <p className="panel-hint">Choose a step in the chain to see its controls.</p>
  const { step, operation, index } = selected
  const { above: Above, below: Below } = stepRooms[operation.id] ?? {}

  return (
    <section ref={section} className="step-panel" aria-labelledby="step-title" tabIndex={-1}>
      <header className="panel-head">
        <h2 id="step-title">{operation.title}</h2>
        {operation.place !== 'output' && (
          <Switch
            className="switch-only"
            aria-label={`${operation.title} acts`}
            isSelected={step.enabled}
            onChange={(enabled) => workbench.setStepEnabled(step.id, enabled)}
          >
            <span className="switch-state">{step.enabled ? 'on' : 'off'}</span>
            <span className="lamp" />
          </Switch>
        )}
      </header>
      {!step.enabled && <p className="control-note">Switched off: colour passes unchanged.</p>}
      {Above && <Above key={`${step.id} above`} step={step} />}
      <ControlList step={step} operation={operation} />
      {Below && <Below key={`${step.id} below`} step={step} />}
      {isFree(step) && <WhereSection key={`${step.id} where`} step={step} />}
      <Group className="panel-actions" aria-label={`${operation.title} as a whole`}>
        {isFree(step) && (
          <>
            <Button
              className="button quiet"
              isDisabled={!mayStandAt(chain, step, index - 1)}
              onPress={() => workbench.moveStep(step.id, index - 1)}
            >
              Earlier
            </Button>
            <Button
              className="button quiet"
              isDisabled={!mayStandAt(chain, step, index + 1)}
              onPress={() => workbench.moveStep(step.id, index + 1)}
            >
              Later
            </Button>
          </>
        )}
        {isRemovable(step) && (
          <Button className="button quiet" onPress={() => workbench.removeStep(step.id)}>
            Remove
          </Button>
        )}
        <Button className="button quiet" onPress={() => workbench.resetStep(step.id)}>
          Reset
        </Button>
      </Group>
    </section>
  )
}
