// The parts of the bench that tell of one frame. They see the workbench as long as their frame is shown and as it last was
// afterwards: while the next one is on its way they stand still, out of reach, and nothing on the screen moves.
import { type ReactNode, useDeferredValue, useState } from 'react'
import type { StoreApi } from 'zustand/vanilla'

import type { Workbench } from '../workbench/workbench.ts'
import { useSession, useWorkbench, WorkbenchProvider } from './workbench-context.tsx'

/** The store as it is while `holds`, and as it last was then. */
function standing<T>(store: StoreApi<T>, holds: () => boolean): StoreApi<T> {
  let last = store.getState()
  return { ...store, getState: () => (holds() ? (last = store.getState()) : last) }
}

/** A frame that the columns tell of, null for none, and the workbench as they see it. */
export interface ToldFrame {
  readonly frameId: string | null
  readonly workbench: Workbench
}

function tell(workbench: Workbench, frameId: string | null): ToldFrame {
  const { session, edit } = workbench
  const holds = () => (session.getState().shown?.id ?? null) === frameId
  return { frameId, workbench: { ...workbench, session: standing(session, holds), edit: standing(edit, holds) } }
}

/**
 * The shown frame, and until it comes the one before; none where the one asked for could not be opened. Follows in work that
 * gives way to everything else, because so much is drawn anew.
 */
export function useToldFrame(): ToldFrame {
  const workbench = useWorkbench()
  const shownId = useSession((session) => session.shown?.id ?? null)
  const isComing = useSession(
    ({ entries, shownId: id }) => entries.find((entry) => entry.id === id)?.state.kind !== 'failed',
  )
  const [told, setTold] = useState(() => tell(workbench, shownId))
  if (shownId !== told.frameId && (shownId !== null || !isComing)) setTold(tell(workbench, shownId))
  return useDeferredValue(told)
}

export function OfFrame({ told, children }: { told: ToldFrame; children: ReactNode }) {
  const isThere = useSession((session) => session.shown !== null && session.shown.id === told.frameId)
  return (
    <div className="of-frame" inert={!isThere} aria-busy={!isThere}>
      <WorkbenchProvider workbench={told.workbench}>{children}</WorkbenchProvider>
    </div>
  )
}
