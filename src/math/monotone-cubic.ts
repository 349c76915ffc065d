// A smooth curve through points that rises wherever the points rise: piecewise cubics with tangents held inside the region in
// which a cubic cannot turn back. F. N. Fritsch & R. E. Carlson, "Monotone Piecewise Cubic Interpolation", SIAM J. Numer.
// Anal. 17(2), 1980. Nothing overshoots, so a curve drawn by hand never makes brighter darker.

export interface MonotoneCubic {
  /** Value at `x`; beyond the ends the end points hold. */
  at(x: number): number
  /** Slope at the last point. */
  readonly lastSlope: number
}

function tangents(secants: readonly number[]): number[] {
  const slopes = [secants[0]]
  for (let k = 1; k < secants.length; k++) {
    const turns = secants[k - 1] * secants[k] <= 0
    slopes.push(turns ? 0 : (secants[k - 1] + secants[k]) / 2)
  }
  slopes.push(secants.at(-1)!)
  secants.forEach((secant, k) => {
    if (secant === 0) slopes[k] = slopes[k + 1] = 0
    const size = secant === 0 ? 0 : Math.hypot(slopes[k] / secant, slopes[k + 1] / secant)
    // Inside the circle of radius 3 a cubic is monotone (section 4 of the paper).
    if (size <= 3) return
    slopes[k] *= 3 / size
    slopes[k + 1] *= 3 / size
  })
  return slopes
}

/** The curve through (`xs`, `ys`). Throws a RangeError for fewer than two points or where `xs` does not rise. */
export function monotoneCubic(xs: readonly number[], ys: readonly number[]): MonotoneCubic {
  if (xs.length < 2) throw new RangeError('A curve needs at least two points.')
  const widths = xs.slice(1).map((x, k) => x - xs[k])
  if (!widths.every((width) => width > 0)) throw new RangeError('The points of a curve must stand from left to right.')
  const slopes = tangents(widths.map((width, k) => (ys[k + 1] - ys[k]) / width))
  return {
    lastSlope: slopes.at(-1)!,
    at(x) {
      if (x <= xs[0]) return ys[0]
      if (x >= xs.at(-1)!) return ys.at(-1)!
      const k = xs.findLastIndex((left) => left <= x)
      const width = widths[k]
      const t = (x - xs[k]) / width
      const rise = t * t * (3 - 2 * t)
      const leave = width * t * (1 - t) * (1 - t)
      const arrive = width * t * t * (t - 1)
      return ys[k] + (ys[k + 1] - ys[k]) * rise + slopes[k] * leave + slopes[k + 1] * arrive
    },
  }
}
