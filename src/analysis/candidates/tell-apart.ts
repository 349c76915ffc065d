// Suggestions that the same words speak for get one more that can be checked by looking: brighter, larger, redder.
import type { ModeFeatures } from './mode-features.ts'

export interface Described {
  readonly reason: string
  readonly features: ModeFeatures
}

interface Measure {
  readonly of: (features: ModeFeatures) => number
  /** Two that lie nearer than this look alike by it (our choice). */
  readonly leastGap: number
  /** Words for the higher and the lower of two, and for the highest of more. */
  readonly higher: string
  readonly lower: string
  readonly highest: string
}

/** In the order in which an eye is quick at them. Colours that are offered always differ in the last. */
const measures: readonly Measure[] = [
  { of: (at) => at.brightStops, leastGap: 0.3, higher: 'brighter', lower: 'darker', highest: 'brightest' },
  {
    of: (at) => Math.log2(at.area),
    leastGap: 0.5,
    higher: 'the larger area',
    lower: 'the smaller area',
    highest: 'largest area',
  },
  {
    of: (at) => at.along,
    leastGap: 0,
    higher: 'more red to blue',
    lower: 'less red to blue',
    highest: 'most red to blue',
  },
]
const ranks = ['', 'second ', 'third ', 'fourth ', 'fifth ', 'sixth ', 'seventh ', 'eighth ']

/** The word of each of `group`, which all bear the same reason. */
function wordsFor(group: readonly Described[]): readonly string[] {
  const orders = measures.map((measure) => {
    const values = group.map(({ features }) => measure.of(features))
    return { measure, values, order: [...values].sort((a, b) => b - a) }
  })
  const clear = orders.find(({ measure, order }) =>
    order.every((v, i) => i === 0 || order[i - 1] - v >= measure.leastGap),
  )
  const { measure, values, order } = clear ?? orders.at(-1)!
  return values.map((value) => {
    const rank = order.indexOf(value)
    return group.length === 2 ? [measure.higher, measure.lower][rank] : `${ranks[rank]}${measure.highest}`
  })
}

/** The reasons in the same order, those that several share made longer; at most eight may share one. */
export function tellApart(described: readonly Described[]): string[] {
  return described.map((one) => {
    const group = described.filter(({ reason }) => reason === one.reason)
    if (group.length === 1) return one.reason
    return [one.reason, wordsFor(group)[group.indexOf(one)]].filter(Boolean).join(', ')
  })
}
