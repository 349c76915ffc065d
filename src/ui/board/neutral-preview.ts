// What is pointed at on the board or on the neutral plane is shown in the picture, and no longer than that.
import { useEffect, useMemo } from 'react'
import { useStore } from 'zustand'

import type { NeutralGains } from '../../edits/marks.ts'
import { neutralGains, withProbe } from '../../edits/stack.ts'
import { useChain } from '../chain/selected-step.ts'
import { pointAtNeutral, screen } from '../screen-store.ts'
import { useWorkbench } from '../workbench-context.tsx'

/** Keeps the picture's preview in step with what is pointed at and with the chain under it. */
export function useNeutralPreview(): void {
  const workbench = useWorkbench()
  const chain = useChain()
  const pointed = useStore(screen, (state) => state.pointed)
  useEffect(() => {
    if (!pointed || chain.length === 0) return
    workbench.preview(withProbe(chain, pointed.gains))
    return () => workbench.preview(null)
  }, [workbench, chain, pointed])
}

/** Nothing stays pointed at when the place that pointed goes away. */
export function useForgetPointed(): void {
  useEffect(() => () => pointAtNeutral(null), [])
}

/** The gains of the frame's own neutral; null where it has none or it is switched off. */
export function usePresentNeutral(): NeutralGains | null {
  const chain = useChain()
  return useMemo(() => neutralGains(chain), [chain])
}
