// How the level of a picture is spread: which share of it lies below a level, and which level a share lies below. Level is
// the mean of the three channels, linear light, as the tone steps take it.

export interface LevelSpread {
  /** Share 0…1 of the pixels below `level`. */
  shareBelow(level: number): number
  /** The level that this share of the pixels lies below. */
  levelAt(share: number): number
  /** Shares of the pixels in `bins` equal parts of 0…1 on an axis; what lies beyond its ends is left out. */
  histogram(bins: number, toAxis: (level: number) => number): Float64Array
}

/** The spread of interleaved RGB; throws a RangeError where there is no pixel. */
export function levelSpread(rgb: Float32Array): LevelSpread {
  const count = rgb.length / 3
  if (count === 0) throw new RangeError('A picture without pixels has no levels.')
  const levels = new Float64Array(count)
  for (let i = 0; i < count; i++) levels[i] = (rgb[i * 3] + rgb[i * 3 + 1] + rgb[i * 3 + 2]) / 3
  levels.sort()
  return {
    shareBelow(level) {
      let low = 0
      let high = count
      while (low < high) {
        const middle = (low + high) >> 1
        if (levels[middle] < level) low = middle + 1
        else high = middle
      }
      return low / count
    },
    levelAt: (share) => levels[Math.min(Math.max(Math.round(share * (count - 1)), 0), count - 1)],
    histogram(bins, toAxis) {
      const shares = new Float64Array(bins)
      for (const level of levels) {
        const at = toAxis(level)
        if (at >= 0 && at <= 1) shares[Math.min(Math.floor(at * bins), bins - 1)] += 1 / count
      }
      return shares
    },
  }
}
