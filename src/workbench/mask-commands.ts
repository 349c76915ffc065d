// Where the steps of the shown frame act: masks as named changes or within a gesture, and what a place is made of.
import type { EditStore } from '../edits/edit-store.ts'
import { withMaskOnOwnStep } from '../edits/own-step.ts'
import { setMask } from '../edits/stack.ts'
import { planeAt } from '../math/plane-at.ts'
import { materialPlaneName } from '../operations/masks/mask.ts'
import type { SessionStore } from './session-store.ts'
import type { SupplyStore } from './supply-store.ts'
import type { Workbench } from './workbench.ts'

export type MaskCommands = Pick<Workbench, 'setMask' | 'changeMask' | 'giveMaskOwnStep' | 'materialAt'>

export function createMaskCommands(session: SessionStore, edits: EditStore, supplies: SupplyStore): MaskCommands {
  const shownId = () => session.getState().shown?.id
  return {
    setMask(stepId, mask, name) {
      const id = shownId()
      if (id !== undefined) edits.apply(id, name, (chain) => setMask(chain, stepId, mask))
    },
    changeMask(stepId, mask) {
      const id = shownId()
      if (id !== undefined) edits.changeGesture(id, (chain) => setMask(chain, stepId, mask))
    },
    giveMaskOwnStep(stepId) {
      const id = shownId()
      const mask = id && edits.history(id)?.chain.find((step) => step.id === stepId)?.mask
      if (!id || !mask) return
      edits.apply(id, 'Places on a step of their own', (chain) => withMaskOnOwnStep(chain, stepId, mask))
      const chain = edits.history(id)!.chain
      const selectedStepId = chain[chain.findIndex((step) => step.id === stepId) + 1].id
      session.setState({ selectedStepId })
    },
    materialAt({ x, y }) {
      const id = shownId()
      const plane = id === undefined ? undefined : supplies.of(id)[materialPlaneName]
      return plane ? planeAt(plane, x, y) : null
    },
  }
}
