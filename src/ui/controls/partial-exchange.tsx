// The way from no exchange of red and blue to the whole one. It is there only while the mix lies on that way.
import { amountOfExchange, partialExchange, type IDENTITY_MIX } from '../../colour/mix-matrices.ts'
import { slider } from '../../operations/controls.ts'
import { partOf, useGesture } from './gesture.ts'
import { SliderRow } from './slider-row.tsx'

const control = slider('Share of the exchange', '%', 0, 100, 1, 0)

interface PartialExchangeProps {
  readonly stepId: string
  readonly controlKey: string
  readonly mix: typeof IDENTITY_MIX
}

export function PartialExchange({ stepId, controlKey, mix }: PartialExchangeProps) {
  const gesture = useGesture(stepId, controlKey, control.label)
  const amount = amountOfExchange(mix)
  if (amount === null) return null
  const percent = Math.round(amount * 1000) / 10
  const exchange = partOf(gesture, (share: number) => partialExchange(share / 100))
  return (
    <div>
      <SliderRow control={control} value={percent} gesture={exchange} />
      <p className="control-note">At 50 % red and blue are one and the same: nothing parts them later.</p>
    </div>
  )
}
