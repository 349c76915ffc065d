// What the picture shows now: which frame, under which chain, with the probe or what is pointed at; and the pixel pointed at.
import { useMemo } from 'react'

import type { Chain } from '../../edits/stack.ts'
import { chainInPicture } from '../../workbench/chain-in-picture.ts'
import type { Place } from '../../workbench/session.ts'
import type { Workbench } from '../../workbench/workbench.ts'
import { screen } from '../screen-store.ts'
import { useThrottledParts } from './use-throttled-parts.ts'
import { useWorkbench } from '../workbench-context.tsx'

export interface Seen {
  /** Null while there is no frame. */
  readonly frameId: string | null
  readonly chain: Chain
}

const noSteps: Chain = []

function readSeen({ session, edit }: Workbench) {
  const { shown, probe, probeTarget, preview, supplyChanges } = session.getState()
  return [
    shown?.id ?? null,
    edit.getState().shown?.chain ?? noSteps,
    probe,
    probeTarget,
    preview,
    supplyChanges,
  ] as const
}

export function useSeen(everyMs: number): Seen {
  const workbench = useWorkbench()
  const { stores, read } = useMemo(
    () => ({ stores: [workbench.session, workbench.edit], read: () => readSeen(workbench) }),
    [workbench],
  )
  const parts = useThrottledParts(stores, read, everyMs)
  return useMemo(() => {
    const [frameId, own, probe, probeTarget, preview] = parts
    const { chain } = chainInPicture(own, { probe, probeTarget, preview })
    return { frameId: own.length > 0 ? frameId : null, chain }
  }, [parts])
}

/** The probe's place, else the last one the pointer stood at. */
export function usePointedPlace(everyMs: number): Place {
  const { session } = useWorkbench()
  const { stores, read } = useMemo(
    () => ({
      stores: [session, screen],
      read: () => [session.getState().probe?.place ?? screen.getState().lastPointed] as const,
    }),
    [session],
  )
  return useThrottledParts(stores, read, everyMs)[0]
}
