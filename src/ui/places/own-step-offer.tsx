// Says what the picture lacks outside the places of the step that gives it its exposure, and offers them a step of their own.
import { Button } from 'react-aria-components/Button'

import { lackingExposureEv } from '../../edits/own-step.ts'
import type { Step } from '../../edits/stack.ts'
import { useChain } from '../chain/selected-step.ts'
import { formatNumber } from '../../text/format-number.ts'
import { useWorkbench } from '../workbench-context.tsx'

export function OwnStepOffer({ step }: { step: Step }) {
  const workbench = useWorkbench()
  const lackingEv = lackingExposureEv(useChain(), step)
  if (lackingEv === 0) return null
  return (
    <>
      <p className="control-note">
        Elsewhere the picture now lacks its exposure of {formatNumber(lackingEv, 2, true)} EV. Keep it everywhere and
        change these places by a step of their own.
      </p>
      <Button className="button" onPress={() => workbench.giveMaskOwnStep(step.id)}>
        Give the places their own step
      </Button>
    </>
  )
}
