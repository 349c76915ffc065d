// The line of black bodies on the pad, its usual stretch drawn full: so one sees how far outside a neutral lies.
import { kelvinText, type KelvinScale } from './kelvin-scale.ts'
import { type PadSize, type PlaneView, pointOf } from './plane-view.ts'

/** Distance of an end's name from its end in CSS pixels. */
const nameGapPx = 7

export function KelvinLine({ scale, view, size }: { scale: KelvinScale; view: PlaneView; size: PadSize }) {
  const path = (gains: KelvinScale['line']) =>
    gains
      .map((each) => pointOf(view, size, each))
      .map(({ x, y }, i) => `${i === 0 ? 'M' : 'L'}${x.toFixed(1)} ${y.toFixed(1)}`)
      .join('')
  return (
    <svg className="kelvin-line" width={size.width} height={size.height} aria-hidden="true">
      <path className="kelvin-under" d={path(scale.line)} />
      <path className="kelvin-whole" d={path(scale.line)} />
      <path className="kelvin-under" d={path(scale.usual)} />
      <path className="kelvin-usual" d={path(scale.usual)} />
      {scale.ends.map(({ kelvin, gains }) => {
        const { x, y } = pointOf(view, size, gains)
        const isRight = x > size.width * 0.7
        return (
          <g key={kelvin}>
            <circle className="kelvin-end" cx={x} cy={y} r={3} />
            <text x={x + (isRight ? -nameGapPx : nameGapPx)} y={y + 4} textAnchor={isRight ? 'end' : 'start'}>
              {kelvinText(kelvin)}
            </text>
          </g>
        )
      })}
    </svg>
  )
}
