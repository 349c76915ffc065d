// Everything that a frame offers as its neutral, in the order in which it is worth looking at: likely places, foliage, what
// the person chose before, and averages of the whole frame. Plain data in and out, for a worker.
import type { CellGrid } from '../../frame/cell-grid.ts'
import type { NoiseModel } from '../../frame/frame.ts'
import { type AutomaticNeutral, automaticNeutral } from './automatic-neutral.ts'
import { type SuggestionOptions, suggestNeutrals } from './suggest-neutrals.ts'
import type { RememberedGrey, Suggestion } from './suggestion.ts'

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
  readonly offers: readonly NeutralOffer[]
  /** Whether the frame still holds colour that a neutral could set. */
  readonly colourLeft: boolean
}

/** Likely places that come before all else. */
const firstPlaces = 3

const averages: readonly (readonly [kind: AutomaticNeutral, reason: string])[] = [
  ['plain mean', 'average of all ratios'],
  ['grey world', 'average of all light (grey world)'],
  ['shades of grey', 'average of the bright parts (shades of grey)'],
]

function fromRatios(id: string, [u, v]: readonly [number, number], reason: string): NeutralOffer {
  return { id, gains: { redStops: -u, blueStops: -v }, place: null, reason, isGrey: false }
}

function fromPlace(id: string, { place, redStops, blueStops, reason }: Suggestion, isGrey: boolean): NeutralOffer {
  return { id, gains: { redStops, blueStops }, place: { x: place[0], y: place[1] }, reason, isGrey }
}

/** The offers for the cells of a frame; `remembered` is offered too. */
export function offerNeutrals(grid: CellGrid, noise: NoiseModel, options: SuggestionOptions): NeutralOffers {
  const { neutrals, foliage, colourLeft } = suggestNeutrals(grid, noise, options)
  const places = neutrals.map((suggestion, i) => fromPlace(`place ${i}`, suggestion, true))
  const remembered: RememberedGrey | undefined = options.remembered
  const offers = [
    ...places.slice(0, firstPlaces),
    ...(foliage ? [fromPlace('foliage', foliage, false)] : []),
    ...(remembered ? [fromRatios('remembered', remembered, 'your last grey with this camera and filter')] : []),
    ...places.slice(firstPlaces),
    ...averages.flatMap(([kind, reason]) => {
      const ratios = automaticNeutral(grid, kind)
      return ratios ? [fromRatios(kind, ratios, reason)] : []
    }),
  ]
  return { offers, colourLeft }
}
