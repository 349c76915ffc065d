// The selected step: what may be done to it as a whole, then its controls.
import { ArrowLeft, ArrowRight, RotateCcw, Trash2 } from 'lucide-react'
import { Switch } from 'react-aria-components/Switch'

import { IconButton } from './icon-button.tsx'
import { mayStandAt, useChain, useSelectedStep } from './selected-step.ts'
import { StepControl } from './step-control.tsx'
import { StepShortcut } from './step-shortcut.tsx'
import { useWorkbench } from './workbench-context.tsx'

export function StepPanel() {
  const workbench = useWorkbench()
  const chain = useChain()
  const selected = useSelectedStep()
  if (!selected) return <p className="panel-hint">Choose a step in the chain to see its controls.</p>
  const { step, operation, index } = selected

  return (
    <section className="step-panel" aria-labelledby="step-title">
      <header className="panel-head">
        <h2 id="step-title">{operation.title}</h2>
        {operation.place === 'free' && (
          <>
            <IconButton
              label="Earlier in the chain"
              isDisabled={!mayStandAt(chain, step, index - 1)}
              onPress={() => workbench.moveStep(step.id, index - 1)}
            >
              <ArrowLeft />
            </IconButton>
            <IconButton
              label="Later in the chain"
              isDisabled={!mayStandAt(chain, step, index + 1)}
              onPress={() => workbench.moveStep(step.id, index + 1)}
            >
              <ArrowRight />
            </IconButton>
            <IconButton label={`Remove ${operation.title}`} onPress={() => workbench.removeStep(step.id)}>
              <Trash2 />
            </IconButton>
          </>
        )}
        <IconButton label={`Reset ${operation.title}`} onPress={() => workbench.resetStep(step.id)}>
          <RotateCcw />
        </IconButton>
        {operation.place !== 'output' && (
          <Switch
            className="switch-only"
            aria-label={`${operation.title} acts`}
            isSelected={step.enabled}
            onChange={(enabled) => workbench.setStepEnabled(step.id, enabled)}
          >
            <span className="switch-track" />
          </Switch>
        )}
      </header>
      {!step.enabled && <p className="control-note">Switched off: colour passes unchanged.</p>}
      <StepShortcut step={step} />
      {Object.entries(operation.controls).map(([key, control]) => (
        <StepControl
          key={`${step.id} ${key}`}
          stepId={step.id}
          controlKey={key}
          control={control}
          value={step.values[key] ?? control.initial}
        />
      ))}
    </section>
  )
}
