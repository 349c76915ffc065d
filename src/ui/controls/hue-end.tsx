// One end of a band's thread, on the upper rail its hue, on the lower what becomes of it.
import { type HueBand, wholeTurnDeg } from '../../operations/hue-bands.ts'
import { formatNumber } from '../../text/format-number.ts'
import type { Gesture } from './gesture.ts'
import { useSlide } from './use-slide.ts'

/** What a Page key goes by (our choice). */
const pageDeg = 15

interface HueEndProps {
  readonly number: number
  readonly band: HueBand
  readonly end: 'hueDeg' | 'turnDeg'
  readonly chosen: boolean
  readonly initial: number
  readonly gesture: Gesture
  readonly onChoose: () => void
}

export function HueEnd({ number, band, end, chosen, initial, gesture, onChoose }: HueEndProps) {
  const value = band[end]
  const isTurn = end === 'turnDeg'
  const hueDeg = wholeTurnDeg(isTurn ? band.hueDeg + band.turnDeg : band.hueDeg)
  const valueText = isTurn
    ? `turned by ${formatNumber(value, 0, true)}°, to ${formatNumber(hueDeg, 0)}°`
    : `${formatNumber(hueDeg, 0)}°`
  const change = (wanted: number) => {
    const rounded = Math.round(wanted * 10) / 10
    if (rounded !== value) gesture.change(rounded)
  }
  const slide = useSlide({
    value,
    initial,
    step: 1,
    pageStep: pageDeg,
    gesture,
    perPx: (target) => 360 / target.parentElement!.clientWidth,
    change,
    pressed() {
      onChoose()
      return null
    },
  })

  return (
    <span
      className={isTurn ? 'hue-end turned' : 'hue-end'}
      data-chosen={chosen || undefined}
      // oxlint-disable-next-line jsx-a11y/prefer-tag-over-role -- a native range has no ends to join
      role="slider"
      tabIndex={0}
      aria-label={isTurn ? `Band ${number}, what becomes of it` : `Band ${number}, its hue`}
      aria-valuemin={isTurn ? -180 : 0}
      aria-valuemax={isTurn ? 180 : 360}
      aria-valuenow={value}
      aria-valuetext={valueText}
      style={{ left: `${(hueDeg / 360) * 100}%` }}
      onFocus={onChoose}
      {...slide}
    >
      {isTurn ? '' : number}
    </span>
  )
}
