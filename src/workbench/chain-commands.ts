// Edits of the shown frame's chain, each under the name that undo will show. A command that cannot be carried out says why.
import type { EditStore } from '../edits/edit-store.ts'
import {
  addStep,
  type Chain,
  isRemovable,
  moveStep,
  removeStep,
  setEnabled,
  setValues,
  type Step,
  usualIndex,
} from '../edits/stack.ts'
import { operationById } from '../operations/index.ts'
import { initialValues, type Values } from '../operations/values.ts'
import { notify, type SessionStore } from './session-store.ts'
import type { Workbench } from './workbench.ts'

export type ChainCommands = Pick<
  Workbench,
  | 'selectStep'
  | 'setValues'
  | 'beginGesture'
  | 'changeValues'
  | 'endGesture'
  | 'cancelGesture'
  | 'setStepEnabled'
  | 'addStep'
  | 'removeStep'
  | 'moveStep'
  | 'resetStep'
  | 'undo'
  | 'redo'
>

export function createChainCommands(session: SessionStore, edits: EditStore): ChainCommands {
  /** Runs an edit on the shown frame; an edit that refuses leaves everything as it was and tells the reason. */
  function onShown(act: (frameId: string, chain: Chain) => void): void {
    const id = session.getState().shownId
    const history = id === null ? undefined : edits.history(id)
    if (id === null || !history) return
    try {
      act(id, history.chain)
    } catch (error) {
      if (!(error instanceof RangeError)) throw error
      notify(session, 'problem', error.message)
    }
  }
  const titleOf = (step: Step | undefined) => (step ? operationById(step.operation).title : 'step')
  const stepOf = (chain: Chain, stepId: string) => chain.find((step) => step.id === stepId)

  return {
    selectStep: (selectedStepId) => session.setState({ selectedStepId }),
    setValues: (stepId, values, name) =>
      onShown((id) => edits.apply(id, name, (chain) => setValues(chain, stepId, values))),
    beginGesture: (name) => onShown((id) => edits.beginGesture(id, name)),
    changeValues: (stepId, values) =>
      onShown((id) => edits.changeGesture(id, (chain) => setValues(chain, stepId, values))),
    endGesture: () => onShown((id) => edits.endGesture(id)),
    cancelGesture: () => onShown((id) => edits.cancelGesture(id)),
    setStepEnabled: (stepId, enabled) =>
      onShown((id, chain) => {
        const name = `Switch ${titleOf(stepOf(chain, stepId)).toLowerCase()} ${enabled ? 'on' : 'off'}`
        edits.apply(id, name, (current) => setEnabled(current, stepId, enabled))
      }),
    addStep: (operationId) =>
      onShown((id, before) => {
        edits.apply(id, `Add ${operationById(operationId).title.toLowerCase()}`, (chain) =>
          addStep(chain, operationId, {}, usualIndex(chain, operationId)),
        )
        const known = new Set(before.map((step) => step.id))
        const added = edits.history(id)?.chain.find((step) => !known.has(step.id))
        if (added) session.setState({ selectedStepId: added.id })
      }),
    removeStep: (stepId) =>
      onShown((id, before) => {
        const index = before.findIndex((step) => step.id === stepId)
        if (index < 0 || !isRemovable(before[index])) return
        edits.apply(id, `Remove ${titleOf(before[index]).toLowerCase()}`, (chain) => removeStep(chain, stepId))
        const left = edits.history(id)?.chain ?? []
        session.setState({ selectedStepId: left[Math.min(index, left.length - 1)]?.id ?? null })
      }),
    moveStep: (stepId, toIndex) =>
      onShown((id, chain) =>
        edits.apply(id, `Move ${titleOf(stepOf(chain, stepId)).toLowerCase()}`, (current) =>
          moveStep(current, stepId, toIndex),
        ),
      ),
    resetStep: (stepId) =>
      onShown((id, chain) => {
        const step = stepOf(chain, stepId)
        if (!step) return
        const values: Values = initialValues(operationById(step.operation))
        edits.apply(id, `Reset ${titleOf(step).toLowerCase()}`, (current) => setValues(current, stepId, values))
      }),
    undo: () => onShown((id) => edits.undo(id)),
    redo: () => onShown((id) => edits.redo(id)),
  }
}
