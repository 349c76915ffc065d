// Gives every part of the screen the workbench and reads its stores. Selectors must return stored references or
// primitives: a fresh object on every call would render for ever.
import { createContext, use, type ReactNode } from 'react'
import { useStore } from 'zustand'

import type { Session } from '../workbench/session.ts'
import type { ShownEdit, Workbench } from '../workbench/workbench.ts'

const WorkbenchContext = createContext<Workbench | null>(null)

export function WorkbenchProvider({ workbench, children }: { workbench: Workbench; children: ReactNode }) {
  return <WorkbenchContext value={workbench}>{children}</WorkbenchContext>
}

/** The workbench. Throws outside its provider. */
export function useWorkbench(): Workbench {
  const workbench = use(WorkbenchContext)
  if (!workbench) throw new Error('This part of the screen stands outside the workbench provider.')
  return workbench
}

export function useSession<T>(select: (session: Session) => T): T {
  return useStore(useWorkbench().session, select)
}

export function useShownEdit<T>(select: (edit: ShownEdit | null) => T): T {
  return useStore(useWorkbench().edit, ({ shown }) => select(shown))
}
