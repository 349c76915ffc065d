// How levels are spread as they enter a step; read again when a step before it changes, not when it changes itself.
import { useEffect, useMemo, useState } from 'react'

import { levelSpread, type LevelSpread } from '../../analysis/level-spread.ts'
import { useThrottledParts } from '../readings/use-throttled-parts.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Least time between two readings in ms (our choice). */
const everyMs = 150

export function useLevelSpread(stepId: string): LevelSpread | null {
  const workbench = useWorkbench()
  const [spread, setSpread] = useState<LevelSpread | null>(null)
  const { stores, read } = useMemo(() => {
    const { session, edit } = workbench
    const readBefore = () => {
      const chain = edit.getState().shown?.chain ?? []
      const index = chain.findIndex((step) => step.id === stepId)
      const { shown, supplyChanges } = session.getState()
      return [shown?.id, supplyChanges, ...chain.slice(0, index)] as const
    }
    return { stores: [session, edit], read: readBefore }
  }, [workbench, stepId])
  const asked = useThrottledParts(stores, read, everyMs)

  useEffect(() => {
    let left = false
    async function readSpread([frameId]: typeof asked): Promise<void> {
      const chain = workbench.edit.getState().shown?.chain
      const rgb = chain && frameId !== undefined ? await workbench.pixelsBefore(chain, stepId) : null
      if (rgb && !left) setSpread(levelSpread(rgb))
    }
    void readSpread(asked)
    return () => {
      left = true
    }
  }, [workbench, stepId, asked])
  return spread
}
