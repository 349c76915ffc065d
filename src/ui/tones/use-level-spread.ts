// How levels are spread as they enter a step; read again when a step before it changes, not when it changes itself.
import { useEffect, useMemo, useState } from 'react'

import { levelSpread, type LevelSpread } from '../../analysis/level-spread.ts'
import { useChain } from '../chain/selected-step.ts'
import { useThrottled } from '../readings/use-throttled.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** Least time between two readings in ms (our choice). */
const everyMs = 150

export function useLevelSpread(stepId: string): LevelSpread | null {
  const workbench = useWorkbench()
  const chain = useChain()
  const shownId = useSession((session) => session.shown?.id)
  const [spread, setSpread] = useState<LevelSpread | null>(null)
  const before = chain.slice(
    0,
    chain.findIndex((step) => step.id === stepId),
  )
  // Steps are never changed in place, so what they hold tells whether they are the same.
  const key = useThrottled(JSON.stringify(before), everyMs)
  const asked = useMemo(() => ({ key, shownId }), [key, shownId])

  useEffect(() => {
    let left = false
    async function read(): Promise<void> {
      const now = workbench.edit.getState().shown
      const rgb = now && asked.shownId !== undefined ? await workbench.pixelsBefore(now.chain, stepId) : null
      if (rgb && !left) setSpread(levelSpread(rgb))
    }
    void read()
    return () => {
      left = true
    }
  }, [workbench, stepId, asked])
  return spread
}
