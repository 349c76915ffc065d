// Suggestions that the same words speak for get one more that can be checked by looking: brighter, where it lies, larger, redder.
import type { ModeFeatures } from './mode-features.ts'

export interface Described {
  readonly reason: string
  readonly features: ModeFeatures
  /** x and y, 0…1 of the upright frame. */
  readonly place: readonly [x: number, y: number]
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

const brightness: Measure = {
  of: (at) => at.brightStops,
  leastGap: 0.3,
  higher: 'brighter',
  lower: 'darker',
  highest: 'brightest',
}
/** In the order in which an eye is quick at them, where brightness and place do not part. Colours that are offered always differ in the last. */
const measures: readonly Measure[] = [
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

function ranked(group: readonly Described[], measure: Measure) {
  const values = group.map(({ features }) => measure.of(features))
  const order = [...values].sort((a, b) => b - a)
  const isClear = order.every((v, i) => i === 0 || order[i - 1] - v >= measure.leastGap)
  const words = values.map((value) => {
    const rank = order.indexOf(value)
    return group.length === 2 ? [measure.higher, measure.lower][rank] : `${ranks[rank]}${measure.highest}`
  })
  return { isClear, words }
}

/** The third of the frame that a place lies in: “top left”, “right”, “middle”. */
function thirdOf([x, y]: Described['place']): string {
  const row = ['top', '', 'bottom'][Math.min(Math.floor(3 * y), 2)]
  const column = ['left', '', 'right'][Math.min(Math.floor(3 * x), 2)]
  return [row, column].filter(Boolean).join(' ') || 'middle'
}

/** The word of each of `group`, which all bear the same reason. */
function wordsFor(group: readonly Described[]): readonly string[] {
  const byBrightness = ranked(group, brightness)
  // “Bright, darker” would read like a slip.
  const isSaid = /bright|dark/.test(group[0].reason)
  if (byBrightness.isClear && !isSaid) return byBrightness.words
  const thirds = group.map(({ place }) => thirdOf(place))
  const orders = measures.map((measure) => ranked(group, measure))
  const { words } = orders.find(({ isClear }) => isClear) ?? orders.at(-1)!
  return thirds.map((third, i) => (thirds.filter((other) => other === third).length === 1 ? third : words[i]))
}

/** The reasons in the same order, those that several share made longer, and a place where there is none; at most eight may share one. */
export function tellApart(described: readonly Described[]): string[] {
  return described.map((one) => {
    const group = described.filter(({ reason }) => reason === one.reason)
    if (group.length === 1) return one.reason || thirdOf(one.place)
    return [one.reason, wordsFor(group)[group.indexOf(one)]].filter(Boolean).join(', ')
  })
}
