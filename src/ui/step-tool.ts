// A tool of the selected step: a button of its controls takes it up and puts it away, and it goes when those controls go.
import { useEffect } from 'react'

import type { Tool } from '../workbench/session.ts'
import { useSession, useWorkbench } from './workbench-context.tsx'

export function useStepTool(tool: Exclude<Tool, 'pan' | 'probe'>) {
  const workbench = useWorkbench()
  const isOut = useSession((session) => session.tool === tool)
  useEffect(
    () => () => {
      if (workbench.session.getState().tool === tool) workbench.setTool('pan')
    },
    [workbench, tool],
  )
  return { isOut, toggle: () => workbench.setTool(isOut ? 'pan' : tool) }
}
