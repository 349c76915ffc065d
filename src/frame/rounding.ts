// What rounding to few codes costs a mean, where the codes of a file are coarse against its noise. In flat places neighbours are
// rounded alike, so that a larger sample does not average it away.

/** How the channels of a frame were rounded before they were opened. */
export interface Rounding {
  /** All levels that a channel can have, linear 0…1, ascending. */
  readonly levels: readonly number[]
  /** Variance in ratios of channels, in that of rounding each channel once: more where colour was rounded on the way. */
  readonly factor: number
  /** Whether noise beyond a step averages rounding away; not where compression rounds whole blocks. */
  readonly isDithered: boolean
}

/** Variance of a level rounded to the nearest of `levels`: a twelfth of the local step squared (uniform distribution). */
function stepVariance(levels: readonly number[], value: number): number {
  let low = 0
  let high = levels.length - 1
  while (high - low > 1) {
    const middle = (low + high) >> 1
    if (levels[middle] <= value) low = middle
    else high = middle
  }
  return (levels[high] - levels[low]) ** 2 / 12
}

/**
 * Variance in stops² of (log2 R/G, log2 B/G) that stays in a mean with positive channels `m`; `cellVariance` is that of single
 * cells. Dithered, the error falls with exp(−2π²σ²), σ in steps, its variance with twice that exponent (Widrow & Kollár 2008,
 * chapter 9, from memory).
 */
export function roundingVariance({ levels, factor, isDithered }: Rounding, m: readonly number[], cellVariance: number) {
  const share = (c: number) => stepVariance(levels, m[c]) / (m[c] * m[c])
  const whole = (factor * (share(0) + 2 * share(1) + share(2))) / (Math.LN2 * Math.LN2)
  if (!isDithered) return whole
  return whole * Math.exp((-(Math.PI ** 2) / 3) * Math.max(cellVariance / whole - 1, 0))
}
