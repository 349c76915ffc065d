// The gains of a neutral in words and stops.
import type { NeutralGains } from './marks.ts'
import { formatNumber } from '../text/format-number.ts'

/** E.g. "red −1.53, blue +0.79". */
export function gainsText({ redStops, blueStops }: NeutralGains): string {
  return `red ${formatNumber(redStops, 2, true)}, blue ${formatNumber(blueStops, 2, true)}`
}

/** Distance in stops within which two neutrals give the same picture to any eye (our choice). */
const sameWithinStops = 0.005

export function isSameNeutral(a: NeutralGains, b: NeutralGains): boolean {
  return Math.abs(a.redStops - b.redStops) < sameWithinStops && Math.abs(a.blueStops - b.blueStops) < sameWithinStops
}
