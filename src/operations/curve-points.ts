// Points of a tone curve as a flat list x, y, x, y …, both 0…1 on the curve's axis, and what may be done to them. Pure.
// The list always reads as a curve that rises: left to right, never falling, from 0 to 1.
import { type MonotoneCubic, monotoneCubic } from '../math/monotone-cubic.ts'

export type CurvePoint = readonly [x: number, y: number]

/** Most points of a curve and least distance between two, so that each can be taken hold of (our choice). */
const mostPoints = 12
const leastDistance = 0.02

const clampShare = (value: number) => Math.min(Math.max(value, 0), 1)
const rounded = (value: number) => Math.round(value * 1000) / 1000
const flat = (points: readonly CurvePoint[]) => points.flatMap(([x, y]) => [rounded(x), rounded(y)])

/** The points in order, with ends at 0 and 1, nothing falling; what stands too close to its left neighbour is left out. */
export function pointsOf(numbers: readonly number[]): CurvePoint[] {
  const given: CurvePoint[] = []
  for (let i = 0; i + 1 < numbers.length; i += 2) given.push([clampShare(numbers[i]), clampShare(numbers[i + 1])])
  given.sort((a, b) => a[0] - b[0])
  if (given.length === 0 || given[0][0] > 0) given.unshift([0, 0])
  if (given.at(-1)![0] < 1) given.push([1, 1])
  const points: CurvePoint[] = []
  for (const [x, y] of given) {
    const before = points.at(-1)
    if (before && x - before[0] < leastDistance / 2) continue
    points.push([x, Math.max(y, before?.[1] ?? 0)])
  }
  const last = points.at(-1)!
  if (last[0] < 1) points[points.length - 1] = [1, Math.max(last[1], points.at(-2)?.[1] ?? 0)]
  return points
}

export function curveOf(numbers: readonly number[]): MonotoneCubic {
  const points = pointsOf(numbers)
  return monotoneCubic(
    points.map(([x]) => x),
    points.map(([, y]) => y),
  )
}

/** The list with a point moved as far as its neighbours let it; the end points stay at 0 and 1 and move up and down only. */
export function movePoint(numbers: readonly number[], index: number, [x, y]: CurvePoint): number[] {
  const points = pointsOf(numbers)
  const before = points[index - 1]
  const after = points[index + 1]
  const atX =
    before && after ? Math.min(Math.max(x, before[0] + leastDistance), after[0] - leastDistance) : points[index][0]
  const atY = Math.min(Math.max(clampShare(y), before?.[1] ?? 0), after?.[1] ?? 1)
  return flat(points.with(index, [atX, atY]))
}

/** The list with a point on the curve at `x` and where it stands in it; null where there is no room for one. */
export function addPoint(numbers: readonly number[], x: number): { numbers: number[]; index: number } | null {
  const points = pointsOf(numbers)
  const isFree = points.every(([other]) => Math.abs(other - x) >= leastDistance - 1e-9)
  if (!isFree || x <= 0 || x >= 1 || points.length >= mostPoints) return null
  const index = points.findIndex(([other]) => other > x)
  return { numbers: flat(points.toSpliced(index, 0, [x, curveOf(numbers).at(x)])), index }
}

/** The list without a point; the two ends stay. */
export function removePoint(numbers: readonly number[], index: number): number[] {
  const points = pointsOf(numbers)
  return flat(index > 0 && index < points.length - 1 ? points.toSpliced(index, 1) : points)
}
