// What the picture shows now: which frame, under which chain, with the probe or what is pointed at.
import { useMemo } from 'react'

import type { Chain } from '../../edits/stack.ts'
import { chainInPicture } from '../../workbench/chain-in-picture.ts'
import { useChain } from '../chain/selected-step.ts'
import { useSession } from '../workbench-context.tsx'

export interface Seen {
  /** Null while there is no frame. */
  readonly frameId: string | null
  readonly chain: Chain
}

export function useSeen(): Seen {
  const own = useChain()
  const probe = useSession((session) => session.probe)
  const probeTarget = useSession((session) => session.probeTarget)
  const preview = useSession((session) => session.preview)
  const shownId = useSession((session) => session.shown?.id ?? null)
  return useMemo(
    () => ({
      frameId: own.length > 0 ? shownId : null,
      chain: chainInPicture(own, { probe, probeTarget, preview }).chain,
    }),
    [own, probe, probeTarget, preview, shownId],
  )
}
