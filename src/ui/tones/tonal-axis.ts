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

/** What is done at even parts of the axis, from the amounts in shadows, midtones and highlights. */
export function amountsOverLevels(amounts: readonly number[], { shadowsEndEv, highlightsBeginEv }: TonalBorders) {
  const levelAt = (ev: number) => midGrey * 2 ** ev
  const [low, high] = [shadowsEndEv, highlightsBeginEv].sort((a, b) => a - b).map(levelAt)
  return Array.from({ length: parts + 1 }, (_, i) => {
    const weights = weigh(levelAt(fromEv + (i / parts) * (toEv - fromEv)), low, high)
    return amounts.reduce((sum, amount, range) => sum + amount * weights[range], 0)
  })
}
