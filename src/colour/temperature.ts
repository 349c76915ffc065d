// Correlated colour temperature and distance from the Planckian locus (Duv) as CIE 15 defines them: of the nearest black body in
// CIE 1960 (u, v). Sought as Ohno, LEUKOS 10 (2014), begins, among neighbours of a fine table, and then between them by halving until
// the way to the locus stands square on it. Most infrared neutrals lie outside of the domain, where kelvin says nothing: then it says
// why it has no answer rather than give a wrong one.
import type { Chromaticity } from './primaries.ts'
import { planckianUv, xyToUv } from './planckian-locus.ts'

export interface Temperature {
  readonly kelvin: number
  /** Distance from the locus in CIE 1960 (u, v), positive above it (greenish). */
  readonly duv: number
}

/** Domain in kelvin and distance in which the method is stated to hold. */
export const temperatureDomain = { from: 1000, to: 20_000, duv: 0.05 }
/** Ratio of neighbours in the table, in which the locus is all but straight (our choice). */
const tableStep = 1.0025
/** Halvings between the table's neighbours: to less than a thousandth of a kelvin. */
const halvings = 18
/** Share of a temperature over which the locus' direction is taken. */
const directionShare = 1e-4

const table = Array.from(
  { length: Math.ceil(Math.log(temperatureDomain.to / temperatureDomain.from) / Math.log(tableStep)) + 3 },
  (_, i) => temperatureDomain.from * tableStep ** (i - 1),
)
let locus: (readonly [number, number])[] | undefined

/** Index of the table's entry nearest to (u, v), never of its ends. */
function nearestEntry([u, v]: readonly [number, number]): number {
  const points = (locus ??= table.map(planckianUv))
  const distance = (i: number) => Math.hypot(u - points[i][0], v - points[i][1])
  let best = 1
  for (let i = 1; i < points.length - 1; i++) if (distance(i) < distance(best)) best = i
  return best
}

/** From the locus at a temperature to (u, v): how far along it, towards hotter, and how far to its upper side. */
function fromLocus([u, v]: readonly [number, number], kelvin: number): { along: number; across: number } {
  const [cold, hot] = [1 - directionShare, 1 + directionShare].map((share) => planckianUv(kelvin * share))
  const [du, dv] = [hot[0] - cold[0], hot[1] - cold[1]]
  const length = Math.hypot(du, dv)
  const [au, av] = [u - (hot[0] + cold[0]) / 2, v - (hot[1] + cold[1]) / 2]
  // Hotter bodies lie to the left: a quarter turn from there to the upper side.
  return { along: (au * du + av * dv) / length, across: (au * dv - av * du) / length }
}

/** Why a chromaticity has no temperature: beyond an end of the scale, or too far from the locus for kelvin to mean anything. */
export type BeyondScale = 'too cold' | 'too hot' | 'off the line'

/** Temperature and Duv of a chromaticity, or in a word why it has none. */
export function temperatureOf(xy: Chromaticity): Temperature | BeyondScale {
  const uv = xyToUv(xy)
  if (!uv.every(Number.isFinite)) return 'off the line'
  const i = nearestEntry(uv)
  let [low, high] = [table[i - 1], table[i + 1]]
  for (let n = 0; n < halvings; n++) {
    const middle = (low + high) / 2
    if (fromLocus(uv, middle).along > 0) low = middle
    else high = middle
  }
  const kelvin = (low + high) / 2
  const duv = fromLocus(uv, kelvin).across
  const { from: coldest, to: hottest, duv: farthest } = temperatureDomain
  if (Math.abs(duv) > farthest) return 'off the line'
  if (kelvin < coldest) return 'too cold'
  return kelvin > hottest ? 'too hot' : { kelvin, duv }
}
