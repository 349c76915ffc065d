// How far the colours of a frame reach: the measures that a single colour is judged against.
import { quantileInPlace } from '../../math/order-statistics.ts'
import type { ColourCells } from './colour-cells.ts'

export interface ColourRange {
  /** p = u − v (log2 R/B) at the 2nd and 98th percentile: foliage lies towards the low end, sky towards the high one. */
  readonly low: number
  readonly high: number
  /** `high − low`, kept above 0, and the distance of the deciles without noise. */
  readonly spread: number
  readonly deciles: number
  /** 98th percentile of the level. */
  readonly bright: number
}

/** Distance from the 10th to the 90th percentile of a normal distribution in standard deviations. */
const decilesOfNormal = 2.563
/** Least spread in stops that colours are measured against (our choice): one tenth of what counts as colour. */
const leastSpread = 0.005

/** The range of at least one cell. */
export function colourRange({ u, v, level, noiseStops }: ColourCells): ColourRange {
  const p = u.map((value, i) => value - v[i])
  const [low, high] = [quantileInPlace(p, 0.02), quantileInPlace(p, 0.98)]
  const deciles = (quantileInPlace(p, 0.9) - quantileInPlace(p, 0.1)) ** 2 - (decilesOfNormal * noiseStops) ** 2
  return {
    low,
    high,
    spread: Math.max(high - low, leastSpread),
    deciles: Math.sqrt(Math.max(deciles, 0)),
    bright: quantileInPlace(level.slice(), 0.98),
  }
}
