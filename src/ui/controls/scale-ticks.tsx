// The ruled scale under a slider: long ticks at round values, short ones between, as on an engraved instrument.
import type { SliderControl } from '../../operations/define.ts'

/** Round distances between long ticks, smallest first; degrees divide the circle. */
const roundSteps = [0.1, 0.2, 0.25, 0.5, 1, 2, 5, 10, 20, 25, 50, 100]
const roundDegrees = [1, 5, 15, 45, 90]
/** At most this many long intervals, so that ticks stay apart in a narrow panel (our choice). */
const mostIntervals = 8
const shortPerLong = 4

/** Share 0…1 of the travel at which `value` lies; beyond the ends it stays at the end. */
export function shareOf({ min, max }: SliderControl, value: number): number {
  return Math.min(Math.max((value - min) / (max - min), 0), 1)
}

function tickValues(control: SliderControl): { long: number[]; short: number[] } {
  const { min, max, unit } = control
  const candidates = unit === '°' ? roundDegrees : roundSteps
  const apart = candidates.find((step) => (max - min) / step <= mostIntervals) ?? (max - min) / 2
  const short: number[] = []
  const long: number[] = []
  const first = Math.ceil((min * shortPerLong) / apart - 1e-9)
  const last = Math.floor((max * shortPerLong) / apart + 1e-9)
  for (let i = first; i <= last; i++) (i % shortPerLong === 0 ? long : short).push((i * apart) / shortPerLong)
  return { long, short }
}

export function ScaleTicks({ control }: { control: SliderControl }) {
  const { long, short } = tickValues(control)
  const line = (value: number, kind: string, bottom: number) => {
    const x = `${shareOf(control, value) * 100}%`
    return <line key={`${kind}${value}`} className={kind} x1={x} x2={x} y1={0} y2={bottom} />
  }
  return (
    <svg className="scale-ticks" aria-hidden="true">
      {short.map((value) => line(value, 'tick-short', 4))}
      {long.map((value) => line(value, 'tick-long', 8))}
      {line(control.initial, 'tick-initial', 11)}
    </svg>
  )
}
