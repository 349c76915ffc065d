// The infrared split's way to its numbers: filter and grey of the frame tell how much of red and green is infrared.
import { Button } from 'react-aria-components/Button'

import { infraredShares, LAST_SPLIT_NM } from '../../analysis/infrared-shares.ts'
import type { Chain } from '../../edits/stack.ts'
import type { FrameFacts } from '../../frame/frame.ts'
import { useChain } from '../chain/selected-step.ts'
import { useSession, useWorkbench } from '../workbench-context.tsx'
import type { StepRoomProps } from './step-room-props.ts'

/** What the chain's neutral takes for grey, in stops against green; the opening neutral where it is off. */
function greyOf(chain: Chain, facts: FrameFacts): readonly [number, number] {
  const step = chain.find(({ operation, enabled }) => operation === 'neutral' && enabled)
  return step ? [-Number(step.values.redStops), -Number(step.values.blueStops)] : facts.referenceNeutral
}

function hintFor(filterNm: FrameFacts['filterNm']): string {
  if (filterNm === undefined) return 'State the filter first: what blue sees depends on it.'
  if (filterNm === null)
    return 'Without a filter blue sees blue light as well: the split is a guess that brings colours nearer to the visible ones.'
  if (filterNm > LAST_SPLIT_NM) return `Behind ${filterNm} nm nothing but infrared is left to split.`
  return `For ${filterNm} nm and the present neutral, taken as a grey. Pick stone, concrete or cloud first.`
}

export function InfraredRoom({ step }: StepRoomProps) {
  const workbench = useWorkbench()
  const chain = useChain()
  const facts = useSession((session) => session.shown?.facts)
  if (!facts) return null
  const { filterNm, referenceNeutral } = facts
  const shares = filterNm === undefined ? null : infraredShares(filterNm, greyOf(chain, facts), referenceNeutral)
  const find = () => {
    if (!shares) return
    const [redPercent, greenPercent] = [shares.red, shares.green].map((share) => Math.round(share * 100))
    workbench.setValues(step.id, { redPercent, greenPercent }, 'Infrared found')
  }
  return (
    <>
      <Button className="button wide" isDisabled={!shares} onPress={find}>
        Find the shares from the frame
      </Button>
      <p className="control-note">{hintFor(filterNm)}</p>
    </>
  )
}
