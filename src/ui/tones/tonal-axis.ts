// The axis of levels that tonal balance is drawn over: stops from mid grey, shadows left.
import { weigh } from '../../operations/tonal-balance.ts'

/** Mid grey, 18 % reflectance; common practice, no source. */
const midGrey = 0.18
const [fromEv, toEv] = [-7, 4]
/** Parts that lines are drawn in (our choice). */
const parts = 68

const evToAxis = (ev: number) => (ev - fromEv) / (toEv - fromEv)

/** A linear level's place on the axis, 0…1 within it. */
export const levelToAxis = (level: number) => evToAxis(Math.log2(level / midGrey))

export interface TonalBorders {
  readonly shadowsEndEv: number
  readonly highlightsBeginEv: number
}

/** Where shadows end and highlights begin on the axis, and the middles of the three ranges; all inside it. */
export function tonalPlaces({ shadowsEndEv, highlightsBeginEv }: TonalBorders) {
  const [low, high] = [shadowsEndEv, highlightsBeginEv].map(evToAxis).sort((a, b) => a - b)
  return { borders: [low, high], middles: [low / 2, (low + high) / 2, (1 + high) / 2] } as const
}

/**
 * What a channel is raised by in stops, before the level is held, at a place 0…1 of the axis: the sum of the amounts in shadows,
 * midtones and highlights by their weights there.
 */
export function amountAt(place: number, amounts: readonly number[], borders: TonalBorders): number {
  const levelAt = (ev: number) => midGrey * 2 ** ev
  const [low, high] = [borders.shadowsEndEv, borders.highlightsBeginEv].sort((a, b) => a - b).map(levelAt)
  const weights = weigh(levelAt(fromEv + place * (toEv - fromEv)), low, high)
  return amounts.reduce((sum, amount, range) => sum + amount * weights[range], 0)
}

/** The same at even parts of the axis, ends included. */
export function amountsOverLevels(amounts: readonly number[], borders: TonalBorders): number[] {
  return Array.from({ length: parts + 1 }, (_, i) => amountAt(i / parts, amounts, borders))
}

/** Share of a plot's height that is left free at its head and foot, so that a point at the end of its travel lies inside. */
const margin = 0.12

/** Place from the head of the plot, 0…1, of an amount that goes from −`most` to `most`. */
export const travelPlace = (amount: number, most: number) => margin + ((most - amount) / (2 * most)) * (1 - 2 * margin)
