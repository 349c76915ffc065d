// Whether a patch of colour is really two: two means along the main direction of its spread.

export interface TwoMeans {
  /** Share of the smaller group, 0…½. */
  readonly smallerShare: number
  /** Distance of the two means. */
  readonly gap: number
}

/** Fewer points than this cannot be told apart, and the part of the variance between the groups that shows two: noise alone gives 0.64 (computed by us). */
const leastPoints = 49
const betweenShare = 0.78
/** Steps of two-means; it settles within a few (common practice, no source). */
const rounds = 12

/** Two groups in the points (a, b), or null where they are one. */
export function findTwoMaterials(a: Float64Array, b: Float64Array): TwoMeans | null {
  const n = a.length
  if (n < leastPoints) return null
  let meanA = 0
  let meanB = 0
  for (let i = 0; i < n; i++) {
    meanA += a[i] / n
    meanB += b[i] / n
  }
  let aa = 0
  let ab = 0
  let bb = 0
  for (let i = 0; i < n; i++) {
    aa += (a[i] - meanA) ** 2 / n
    ab += ((a[i] - meanA) * (b[i] - meanB)) / n
    bb += (b[i] - meanB) ** 2 / n
  }
  const angle = Math.atan2(2 * ab, aa - bb) / 2
  const along = Float64Array.from(a, (value, i) => (value - meanA) * Math.cos(angle) + (b[i] - meanB) * Math.sin(angle))
  const variance = (aa + bb + Math.hypot(aa - bb, 2 * ab)) / 2
  if (!(variance > 0)) return null

  let divide = 0
  let low = 0
  let lowMean = 0
  let highMean = 0
  for (let round = 0; round < rounds; round++) {
    let sum = 0
    low = 0
    for (const value of along) {
      if (value >= divide) continue
      sum += value
      low++
    }
    if (low === 0 || low === n) return null
    lowMean = sum / low
    highMean = -sum / (n - low)
    const next = (lowMean + highMean) / 2
    if (next === divide) break
    divide = next
  }
  const share = low / n
  const gap = highMean - lowMean
  return (share * (1 - share) * gap * gap) / variance > betweenShare
    ? { smallerShare: Math.min(share, 1 - share), gap }
    : null
}
