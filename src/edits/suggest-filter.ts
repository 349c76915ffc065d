// Suggests a filter where the data itself speaks: when no colour is left, the cut-on is long. Channel ratios alone say less than
// they seem to: with one sensor's ratios the filter of another sensor was named rightly in only a quarter of simulated scenes.
import type { NoiseModel, Overview } from '../frame/frame.ts'

export interface FilterSuggestion {
  readonly filterNm: number
  /** One sentence for people: why, and how sure. */
  readonly reason: string
}

/** Edge of the blocks whose means are compared, in overview pixels: enough to average noise away, small beside any object (our choice). */
const BLOCK = 8
/** Overview pixels at or above this largest raw level are left out; common practice, no source. */
const CLIPPING_FROM = 0.97
/** Spread of log2 R/B in stops below which no colour is left: met by all simulated scenes at 830 and 850 nm, by half to three quarters at 780 nm, by 2 % at most at 720 nm. */
const COLOURLESS_SPREAD = 0.05
/** Fewest usable blocks for a statement (our choice). */
const FEWEST_BLOCKS = 50
/** Distance from the 10th to the 90th percentile of a normal distribution in standard deviations. */
const DECILES = 2.563

interface BlockReading {
  /** log2 R/B of the block mean. */
  readonly log2RedBlue: number
  /** Variance of that number from photon and read noise. */
  readonly variance: number
}

/** The reading of one block, or null where it is too dark or too much is clipped. */
function readBlock(
  { width, rgba, scale }: Overview,
  noise: NoiseModel,
  left: number,
  top: number,
): BlockReading | null {
  let [red, blue, count] = [0, 0, 0]
  for (let y = top; y < top + BLOCK; y++) {
    for (let x = left; x < left + BLOCK; x++) {
      const i = (y * width + x) * 4
      if (rgba[i + 3] >= CLIPPING_FROM) continue
      red += rgba[i]
      blue += rgba[i + 2]
      count++
    }
  }
  const { fullScaleElectrons, readNoiseElectrons } = noise
  const samples = Math.max((count * scale * scale) / 4, 1)
  const floor = (4 * readNoiseElectrons) / (fullScaleElectrons * Math.sqrt(samples))
  if (count < (BLOCK * BLOCK) / 2 || red / count < floor || blue / count < floor) return null
  const relative = (mean: number) =>
    (mean / fullScaleElectrons + (readNoiseElectrons / fullScaleElectrons) ** 2) / mean ** 2
  const variance = (relative(red / count) + relative(blue / count)) / (samples * Math.LN2 ** 2)
  return { log2RedBlue: Math.log2(red / blue), variance }
}

/**
 * A suggestion from the frame's overview, or null where the data names no filter (the usual case below 780 nm).
 * A frame of one material only can look colourless behind any filter, so the suggestion is never more than that.
 */
export function suggestFilter(overview: Overview, noise: NoiseModel): FilterSuggestion | null {
  const blocks: BlockReading[] = []
  for (let top = 0; top + BLOCK <= overview.height; top += BLOCK) {
    for (let left = 0; left + BLOCK <= overview.width; left += BLOCK) {
      const block = readBlock(overview, noise, left, top)
      if (block) blocks.push(block)
    }
  }
  if (blocks.length < FEWEST_BLOCKS) return null
  const sorted = blocks.map(({ log2RedBlue }) => log2RedBlue).sort((a, b) => a - b)
  const at = (share: number) => sorted[Math.round(share * (sorted.length - 1))]
  const noiseVariance = blocks.reduce((sum, { variance }) => sum + variance, 0) / blocks.length
  const spread = Math.sqrt(Math.max((at(0.9) - at(0.1)) ** 2 - DECILES ** 2 * noiseVariance, 0))
  if (spread >= COLOURLESS_SPREAD) return null
  return {
    filterNm: 830,
    reason: `Red and blue differ by only ${spread.toFixed(2)} stop across the frame: likely 780 nm or longer, unless it shows a single material.`,
  }
}
