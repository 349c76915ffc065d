// Makes the colour table that a dialog describes, anew a moment after each change; what was begun before is given up.
import { useEffect, useState } from 'react'

import type { TableFile, TableFileSettings } from '../../export/table-file.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Quiet time before the work begins, in ms, so that typing and switching through choices do not start it (our choice). */
const settleMs = 250

export type BakedTable =
  | { readonly state: 'working' }
  | { readonly state: 'done'; readonly settings: TableFileSettings; readonly file: TableFile }
  | { readonly state: 'failed'; readonly reason: string }

const working: BakedTable = { state: 'working' }

export function useBakedTable(settings: TableFileSettings): BakedTable {
  const workbench = useWorkbench()
  const [made, setMade] = useState<{ readonly of: TableFileSettings; readonly baked: BakedTable } | null>(null)
  useEffect(() => {
    const abort = new AbortController()
    const put = (baked: BakedTable) => abort.signal.aborted || setMade({ of: settings, baked })
    const timer = setTimeout(() => {
      workbench.bakeTable(settings, abort.signal).then(
        (file) => put({ state: 'done', settings, file }),
        (reason: Error) => put({ state: 'failed', reason: reason.message }),
      )
    }, settleMs)
    return () => {
      clearTimeout(timer)
      abort.abort()
    }
  }, [workbench, settings])
  return made?.of === settings ? made.baked : working
}
