// Everything that a frame offers as its neutral, in the order in which it is worth looking at: likely places, foliage, what
// the person chose before; and averages of the whole frame. Plain data in and out, for a worker.
import type { CellGrid } from '../../frame/cell-grid.ts'
import type { NoiseModel } from '../../frame/frame.ts'
import { type AutomaticNeutral, automaticNeutral } from './automatic-neutral.ts'
import { mostWords } from './describe-mode.ts'
import { type SuggestionOptions, suggestNeutrals } from './suggest-neutrals.ts'
import { sameColourStops, type Suggestion } from './suggestion.ts'

export interface NeutralOffer {
  /** Unlike those of the frame's other offers. */
  readonly id: string
  readonly gains: { readonly redStops: number; readonly blueStops: number }
  /** 0…1 of the upright frame; null where it is no place's colour. */
  readonly place: { readonly x: number; readonly y: number } | null
  /** What speaks for it, beginning in lower case and without a full stop. */
  readonly reason: string
  /** Whether it is offered as a true grey of the scene, so that choosing it says something about the next frame. */
  readonly isGrey: boolean
}

export interface NeutralOffers {
  /** No two of them practically the same. */
  readonly offers: readonly NeutralOffer[]
  /** What the frame averages to, each by its name whatever is offered beside it; none where no cell is usable. */
  readonly averages: readonly NeutralOffer[]
  /** Whether the frame still holds colour that a neutral could set. */
  readonly colourLeft: boolean
}

/** Likely places that come before all else. */
const firstPlaces = 3
/** Words that place a colour between foliage and sky: two of them would say one thing twice. */
const alongWords = /foliage|red to blue/

const averageKinds: readonly (readonly [kind: AutomaticNeutral, reason: string])[] = [
  ['plain mean', 'plain mean of all ratios'],
  ['grey world', 'grey world: all light'],
  ['shades of grey', 'shades of grey: bright parts'],
]

function fromRatios(id: string, [u, v]: readonly [number, number], reason: string): NeutralOffer {
  return { id, gains: { redStops: -u, blueStops: -v }, place: null, reason, isGrey: false }
}

function fromPlace(id: string, { place, redStops, blueStops, reason }: Suggestion, isGrey: boolean): NeutralOffer {
  return { id, gains: { redStops, blueStops }, place: { x: place[0], y: place[1] }, reason, isGrey }
}

const apart = ({ gains: a }: NeutralOffer, { gains: b }: NeutralOffer) =>
  Math.hypot(a.redStops - b.redStops, a.blueStops - b.blueStops)

/** Those of `more` that `offers` do not practically hold. */
const unlike = (offers: readonly NeutralOffer[], more: readonly NeutralOffer[]) =>
  more.filter((offer) => !offers.some((other) => apart(other, offer) < sameColourStops))

/** `offers` with `words` put before those of the nearest that is practically `next`; null where none is. */
function joined(offers: readonly NeutralOffer[], next: NeutralOffer, words: string): NeutralOffer[] | null {
  const [nearest] = offers.toSorted((a, b) => apart(a, next) - apart(b, next))
  if (!nearest || apart(nearest, next) >= sameColourStops) return null
  const said = words.split(', ')
  const isNew = (word: string) => !said.includes(word) && !(alongWords.test(words) && alongWords.test(word))
  const reason = [...said, ...nearest.reason.split(', ').filter(isNew)].slice(0, mostWords).join(', ')
  return offers.map((offer) => (offer === nearest ? { ...offer, reason } : offer))
}

/** The offers for the cells of a frame; foliage and the `remembered` grey lend their words to a place of their colour. */
export function offerNeutrals(grid: CellGrid, noise: NoiseModel, options: SuggestionOptions): NeutralOffers {
  const { neutrals, foliage, colourLeft } = suggestNeutrals(grid, noise, options)
  const places = neutrals.map((suggestion, i) => fromPlace(`place ${i}`, suggestion, true))
  let first = places.slice(0, firstPlaces)
  if (foliage) {
    const leaves = fromPlace('foliage', foliage, false)
    first = joined(first, leaves, foliage.reason) ?? [...first, leaves]
  }
  let offers = [...first, ...unlike(first, places.slice(firstPlaces))]
  if (options.remembered) {
    const remembered = fromRatios('remembered', options.remembered, 'your last grey with this camera and filter')
    offers = joined(offers, remembered, 'your last grey') ?? offers.toSpliced(first.length, 0, remembered)
  }
  const averages = averageKinds.flatMap(([kind, reason]) => {
    const ratios = automaticNeutral(grid, kind)
    return ratios ? [fromRatios(kind, ratios, reason)] : []
  })
  return { offers, averages, colourLeft }
}
