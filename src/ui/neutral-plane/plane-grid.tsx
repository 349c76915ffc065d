// Lines of the pad in stops, with their numbers outside of it, where no colour lies under them.
import { decimalsOf, formatNumber } from '../../text/format-number.ts'
import { gainsAt, gridStep, gridValues, type PadSize, type PlaneView, pointOf } from './plane-view.ts'

/** Room for the numbers left of and below the pad in CSS pixels; the style sheet leaves the same. */
const numberGapPx = 6
const numberBaselinePx = 15

export function PlaneGrid({ view, size }: { view: PlaneView; size: PadSize }) {
  const step = gridStep(view)
  const lowest = gainsAt(view, size, 0, size.height)
  const highest = gainsAt(view, size, size.width, 0)
  const written = (stops: number) => formatNumber(stops, decimalsOf(step), true)
  const line = (stops: number) => (Math.abs(stops) < step / 2 ? 'plane-line zero' : 'plane-line')
  const { width, height } = size
  return (
    <svg className="plane-grid" width={width} height={height} aria-hidden="true">
      {gridValues(lowest.redStops, highest.redStops, step).map((redStops) => {
        const { x } = pointOf(view, size, { redStops, blueStops: 0 })
        return (
          <g key={`red ${redStops}`}>
            <line className={line(redStops)} x1={x} x2={x} y1={0} y2={height} />
            <text x={x} y={height + numberBaselinePx} textAnchor="middle">
              {written(redStops)}
            </text>
          </g>
        )
      })}
      {gridValues(lowest.blueStops, highest.blueStops, step).map((blueStops) => {
        const { y } = pointOf(view, size, { redStops: 0, blueStops })
        return (
          <g key={`blue ${blueStops}`}>
            <line className={line(blueStops)} x1={0} x2={width} y1={y} y2={y} />
            <text x={-numberGapPx} y={y} textAnchor="end" dominantBaseline="central">
              {written(blueStops)}
            </text>
          </g>
        )
      })}
    </svg>
  )
}
