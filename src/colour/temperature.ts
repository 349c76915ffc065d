// Correlated colour temperature and distance from the Planckian locus (Duv), after Ohno, LEUKOS 10 (2014): where the locus is
// near, by a triangle, else by a parabola over three points of a table. Most infrared neutrals lie outside of its domain,
// where kelvin says nothing: then it says why it has no answer rather than give a wrong one.
import type { Chromaticity } from './primaries.ts'
import { planckianUv, uvToXy, xyToUv } from './planckian-locus.ts'

export interface Temperature {
  readonly kelvin: number
  /** Distance from the locus in CIE 1960 (u, v), positive above it (greenish). */
  readonly duv: number
}

/** Domain in kelvin and distance in which the method is stated to hold. */
export const temperatureDomain = { from: 1000, to: 20_000, duv: 0.05 }
/** Ratio of neighbours in the table; the finer the table, the smaller the method's own error. */
const tableStep = 1.0025
/** Distance above which the parabola is used (Ohno 2014); its correction factor belongs to coarser tables. */
const parabolaFrom = 0.002

const table = Array.from(
  { length: Math.ceil(Math.log(temperatureDomain.to / temperatureDomain.from) / Math.log(tableStep)) + 3 },
  (_, i) => temperatureDomain.from * tableStep ** (i - 1),
)
let locus: (readonly [number, number])[] | undefined

/** The table's entry nearest to (u, v), never its ends, and the distances of it and its neighbours. */
function nearest([u, v]: readonly [number, number]) {
  const points = (locus ??= table.map(planckianUv))
  const distance = (i: number) => Math.hypot(u - points[i][0], v - points[i][1])
  let best = 1
  for (let i = 1; i < points.length - 1; i++) if (distance(i) < distance(best)) best = i
  return { points, i: best, before: distance(best - 1), here: distance(best), after: distance(best + 1) }
}

/** Why a chromaticity has no temperature: beyond an end of the scale, or too far from the locus for kelvin to mean anything. */
export type BeyondScale = 'too cold' | 'too hot' | 'off the line'

/** Temperature and Duv of a chromaticity, or in a word why it has none. */
export function temperatureOf(xy: Chromaticity): Temperature | BeyondScale {
  const uv = xyToUv(xy)
  if (!uv.every(Number.isFinite)) return 'off the line'
  const { points, i, before, here, after } = nearest(uv)
  const [t0, t1, t2] = [table[i - 1], table[i], table[i + 1]]
  const [from, to] = [points[i - 1], points[i + 1]]

  const length = Math.hypot(to[0] - from[0], to[1] - from[1])
  const along = (before ** 2 - after ** 2 + length ** 2) / (2 * length)
  const sign = Math.sign(uv[1] - (from[1] + ((to[1] - from[1]) * along) / length)) || 1
  let kelvin = t0 + ((t2 - t0) * along) / length
  let duv = sign * Math.sqrt(Math.max(before ** 2 - along ** 2, 0))

  if (Math.abs(duv) >= parabolaFrom) {
    const scale = (t2 - t1) * (t0 - t2) * (t1 - t0)
    const a = (t0 * (after - here) + t1 * (before - after) + t2 * (here - before)) / scale
    const b = -(t0 ** 2 * (after - here) + t1 ** 2 * (before - after) + t2 ** 2 * (here - before)) / scale
    const c = -(before * (t2 - t1) * t1 * t2 + here * (t0 - t2) * t0 * t2 + after * (t1 - t0) * t0 * t1) / scale
    kelvin = -b / (2 * a)
    duv = sign * (a * kelvin ** 2 + b * kelvin + c)
  }
  const { from: coldest, to: hottest, duv: farthest } = temperatureDomain
  if (kelvin < coldest) return 'too cold'
  if (kelvin > hottest) return 'too hot'
  return Math.abs(duv) <= farthest ? { kelvin, duv } : 'off the line'
}

/** CIE 1931 (x, y) at a temperature in kelvin and a distance from the locus, square to it in (u, v). */
export function chromaticityOf({ kelvin, duv }: Temperature): [x: number, y: number] {
  const [u, v] = planckianUv(kelvin)
  const [du, dv] = planckianUv(kelvin * 1.0001).map((value, i) => value - [u, v][i])
  const length = Math.hypot(du, dv)
  // Hotter bodies lie to the left: a quarter turn from there to the upper side.
  return uvToXy([u + (duv * dv) / length, v - (duv * du) / length])
}
