// Where shadows, midtones and highlights lie: their weights over the levels of the picture.
import { weigh } from '../../operations/tonal-balance.ts'
import type { StepRoomProps } from '../panel/step-room-props.ts'
import { LevelBackdrop } from './level-backdrop.tsx'
import { useLevelSpread } from './use-level-spread.ts'

const [width, height] = [272, 72]
/** Levels on the axis: stops from mid grey (common practice, 18 %). */
const midGrey = 0.18
const [fromEv, toEv] = [-7, 4]
const ranges = ['shadows', 'midtones', 'highlights'] as const

const toAxis = (level: number) => (Math.log2(level / midGrey) - fromEv) / (toEv - fromEv)
const levelAt = (share: number) => midGrey * 2 ** (fromEv + share * (toEv - fromEv))

/** Weights of the three ranges at even parts of the axis. */
function sampleWeights(lowEv: number, highEv: number): number[][] {
  const pivots = [midGrey * 2 ** Math.min(lowEv, highEv), midGrey * 2 ** Math.max(lowEv, highEv)] as const
  return Array.from({ length: 69 }, (_, i) => [...weigh(levelAt(i / 68), ...pivots)])
}

export function TonalWeights({ step }: StepRoomProps) {
  const spread = useLevelSpread(step.id)
  const samples = sampleWeights(Number(step.values.shadowsEndEv), Number(step.values.highlightsBeginEv))
  const pathOf = (range: number) =>
    `M${samples.map((weights, i) => `${(i / 68) * width} ${(2 + (1 - weights[range]) * (height - 4)).toFixed(1)}`).join('L')}`
  return (
    <figure className="tonal-weights">
      <svg
        viewBox={`0 0 ${width} ${height}`}
        preserveAspectRatio="none"
        role="img"
        aria-label="Weights of shadows, midtones and highlights over the levels of the picture"
      >
        <LevelBackdrop spread={spread} toAxis={toAxis} width={width} height={height} />
        {ranges.map((range, i) => (
          <path key={range} className="weight-line" d={pathOf(i)} />
        ))}
      </svg>
      <figcaption aria-hidden="true">
        {ranges.map((range) => (
          <span key={range}>{range}</span>
        ))}
      </figcaption>
    </figure>
  )
}
