// How far a neutral picked from a patch may be off: one standard deviation in stops of (log2 R/G, log2 B/G), from photon
// and read noise, the patch's own spread, clipping and a second material. Formula and its constants fitted by us to
// simulated picks.
import type { SampledCells } from './disc-cells.ts'
import type { NoiseModel } from './frame.ts'
import { roundingVariance } from './rounding.ts'
import { findTwoMaterials, type TwoMeans } from './two-materials.ts'

/** Share of the spread's variance that stays however many cells there are, and error in stops of a wholly clipped patch. */
const lastingSpread = 0.09
const clippedError = 0.03

export interface PickError {
  readonly errorStops: number
  /** Standard deviation of the cells beyond noise, in stops. */
  readonly spreadStops: number
  readonly two: TwoMeans | null
  /** The largest part of the error. */
  readonly because: 'noise' | 'spread' | 'clipping' | 'two materials'
}

/** Variance in stops² of the mean of `cells` cells with means `m`; `counts` photosites of each colour in a cell. */
export function noiseVariance(
  m: readonly number[],
  cells: number,
  noise: NoiseModel,
  counts: readonly [number, number, number],
): number {
  const { fullScaleElectrons: full, readNoiseElectrons: read } = noise
  const share = (c: number) => (m[c] * full + read * read) / (m[c] * m[c] * counts[c])
  return (share(0) + 2 * share(1) + share(2)) / (full * full * cells * Math.LN2 * Math.LN2)
}

/** The error of a pick with positive means `m`. */
export function pickError(
  { rgb, cells, allCells, cell }: SampledCells,
  m: readonly number[],
  noise: NoiseModel,
): PickError {
  const mono = cell.counts[0] === 0
  const clipped = 1 - cells / allCells
  const a = new Float64Array(cells)
  const b = new Float64Array(cells)
  let squares = 0
  for (let i = 0, at = 0; i < cells; i++, at += 3) {
    const green = rgb[at + 1] / m[1]
    a[i] = (rgb[at] / m[0] - green) / Math.LN2
    b[i] = (rgb[at + 2] / m[2] - green) / Math.LN2
    squares += a[i] * a[i] + b[i] * b[i]
  }
  const variance = mono ? 0 : noiseVariance(m, cells, noise, cell.counts)
  const spread = Math.max(0, squares / cells - cells * variance)
  const two = findTwoMaterials(a, b)
  const parts = {
    noise: variance + (mono || !noise.rounding ? 0 : roundingVariance(noise.rounding, m, squares / cells)),
    spread: Math.max(spread / cells, lastingSpread * spread),
    clipping: (clippedError * clipped) ** 2,
    'two materials': two ? (two.smallerShare * two.gap) ** 2 : 0,
  }
  const [because] = (Object.keys(parts) as (keyof typeof parts)[]).sort((p, q) => parts[q] - parts[p])
  const total = parts.noise + parts.spread + parts.clipping + parts['two materials']
  return { errorStops: Math.sqrt(total), spreadStops: Math.sqrt(spread), two, because }
}
