// What would become of neutrals under the chain on the bench, made anew when anything but the neutral's own gains changes.
import { useMemo } from 'react'

import type { Chain } from '../../edits/stack.ts'
import type { NeutralOutlook } from '../../workbench/neutral-outlook.ts'
import { useChain } from '../chain/selected-step.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'

/** The chain as text, without what the outlook does not depend on. */
function textWithoutGains(chain: Chain): string {
  return JSON.stringify(
    chain.map((step) =>
      step.operation === 'neutral'
        ? { ...step.values, redStops: 0, blueStops: 0, seenFrom: [] }
        : [step.id, step.operation, step.version, step.enabled, step.values, step.mask],
    ),
  )
}

export function useOutlook(): NeutralOutlook | null {
  const workbench = useWorkbench()
  const shown = useSession((session) => session.shown)
  const supplyChanges = useSession((session) => session.supplyChanges)
  const chainText = textWithoutGains(useChain())
  // oxlint-disable-next-line react/exhaustive-deps -- they stand for the chain and the supplies that the workbench reads itself
  return useMemo(() => workbench.neutralOutlook(), [workbench, shown, chainText, supplyChanges])
}
