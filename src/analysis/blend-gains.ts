// Several neutrals as one: gains are factors, so their middle is the geometric mean, which in stops is the plain one.

export interface WeightedGains {
  readonly redStops: number
  readonly blueStops: number
  /** Not negative; only the proportion of weights counts. */
  readonly weight: number
}

/** The weighted middle of gains in stops relative to green. Throws a RangeError where no weight is above 0. */
export function blendGains(marks: readonly WeightedGains[]): { redStops: number; blueStops: number } {
  const total = marks.reduce((sum, { weight }) => sum + weight, 0)
  if (!(total > 0) || marks.some(({ weight }) => weight < 0)) {
    throw new RangeError('Blending neutrals needs weights that are not negative, and one of them above 0.')
  }
  const middle = (stops: 'redStops' | 'blueStops') =>
    marks.reduce((sum, mark) => sum + (mark[stops] * mark.weight) / total, 0)
  return { redStops: middle('redStops'), blueStops: middle('blueStops') }
}
