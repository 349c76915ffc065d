// The overview reduced to at most 60,000 cells and smoothed in linear `cameraRgb`: what whole-frame judgements about
// colour are made on. Clipped areas carry no colour and are left out; dark ones are never dropped singly, because that
// would bias the ratios, but where the mean itself drowns in noise.
import type { NoiseModel, Overview } from './frame.ts'

/** Most cells of a grid: enough for judgements about the whole, few enough for them to be quick (our choice). */
const mostCells = 60_000
/** An area is valid while its largest normalised photosite stays below this; a margin below saturation (our choice). */
export const clippingLevel = 0.97
/** Noise of log2 R/B that smoothing aims at, and the largest that counts, in stops (our choice, tuned by simulation). */
const wantedNoiseStops = 0.012
const mostNoiseStops = 0.08
/** Valid share a smoothing box needs, and the level below which a mean drowns, in read noise of the mean (our choice). */
const leastValidShare = 0.6
const leastLevelInReadNoise = 4
const largestRadius = 5

export interface CellGrid {
  readonly width: number
  readonly height: number
  /** Box means of linear `cameraRgb`, interleaved RGB; unusable where `valid` is 0. */
  readonly rgb: Float32Array
  readonly valid: Uint8Array
  /** The same cells before smoothing: what texture is read from. */
  readonly unsmoothed: Float32Array
  /** 1 where no photosite of the cell itself is clipped. */
  readonly unclipped: Uint8Array
  /** Red (or blue) photosites that one unsmoothed cell averages. */
  readonly photosites: number
  /** Radius of the smoothing box in cells. */
  readonly radius: number
  /** Overview pixels along one side of a cell. */
  readonly step: number
}

/** Photon and read noise of one photosite as variance over value squared, times full scale squared. */
function relativeVariance(value: number, { fullScaleElectrons, readNoiseElectrons }: NoiseModel): number {
  return (Math.max(value, 0) * fullScaleElectrons + readNoiseElectrons * readNoiseElectrons) / (value * value)
}

/** Noise of log2(R/B) in stops, for means r and b over `photosites` of each. */
export function logRatioNoise(r: number, b: number, noise: NoiseModel, photosites: number): number {
  const variance = (relativeVariance(r, noise) + relativeVariance(b, noise)) / photosites
  return Math.sqrt(variance) / (noise.fullScaleElectrons * Math.LN2)
}

/** The overview averaged in squares of `step` pixels: interleaved RGB, and 1 where none of them is clipped. */
function reduce(overview: Overview, step: number, width: number, height: number) {
  const { rgba } = overview
  const rgb = new Float32Array(width * height * 3)
  const unclipped = new Uint8Array(width * height)
  const share = 1 / (step * step)
  for (let y = 0, cell = 0; y < height; y++) {
    for (let x = 0; x < width; x++, cell++) {
      let red = 0
      let green = 0
      let blue = 0
      let most = 0
      for (let row = y * step; row < (y + 1) * step; row++) {
        for (let i = (row * overview.width + x * step) * 4, end = i + step * 4; i < end; i += 4) {
          red += rgba[i]
          green += rgba[i + 1]
          blue += rgba[i + 2]
          if (rgba[i + 3] > most) most = rgba[i + 3]
        }
      }
      rgb[cell * 3] = red * share
      rgb[cell * 3 + 1] = green * share
      rgb[cell * 3 + 2] = blue * share
      if (most < clippingLevel) unclipped[cell] = 1
    }
  }
  return { rgb, unclipped }
}

/** Sums of the unclipped cells' red, green, blue and number over all rectangles from the origin; four planes in one, with a row and a column of zeros before them. */
function integrate(rgb: Float32Array, unclipped: Uint8Array, width: number, height: number): Float64Array {
  const sums = new Float64Array((width + 1) * (height + 1) * 4)
  const stride = (width + 1) * 4
  for (let y = 0, cell = 0; y < height; y++) {
    let red = 0
    let green = 0
    let blue = 0
    let cells = 0
    for (let x = 0, to = (y + 1) * stride + 4; x < width; x++, cell++, to += 4) {
      if (unclipped[cell]) {
        red += rgb[cell * 3]
        green += rgb[cell * 3 + 1]
        blue += rgb[cell * 3 + 2]
        cells++
      }
      sums[to] = sums[to - stride] + red
      sums[to + 1] = sums[to - stride + 1] + green
      sums[to + 2] = sums[to - stride + 2] + blue
      sums[to + 3] = sums[to - stride + 3] + cells
    }
  }
  return sums
}

function median(values: readonly number[]): number {
  return Float64Array.from(values).sort()[values.length >> 1]
}

/**
 * Reduces and smooths an overview. `photosites` is how many red (or blue) photosites one overview pixel averages.
 * The box is as large as the noise asks for; a cell is valid where enough of its box is unclipped and above the noise.
 */
export function makeCellGrid(overview: Overview, noise: NoiseModel, photosites: number): CellGrid {
  const step = Math.max(1, Math.ceil(Math.sqrt((overview.width * overview.height) / mostCells)))
  const width = Math.max(1, Math.floor(overview.width / step))
  const height = Math.max(1, Math.floor(overview.height / step))
  const { rgb: cells, unclipped } = reduce(overview, step, width, height)
  const count = photosites * step * step

  const noises: number[] = []
  // Every eighth cell tells the median well enough.
  for (let cell = 0; cell < unclipped.length; cell += 8) {
    const stops = logRatioNoise(cells[cell * 3], cells[cell * 3 + 2], noise, count)
    if (unclipped[cell] && Number.isFinite(stops)) noises.push(stops)
  }
  const wanted = noises.length ? Math.ceil((median(noises) / wantedNoiseStops - 1) / 2) : 1
  const radius = Math.min(Math.max(wanted, 1), largestRadius)

  const sums = integrate(cells, unclipped, width, height)
  const stride = (width + 1) * 4
  const rgb = new Float32Array(width * height * 3)
  const valid = new Uint8Array(width * height)
  const readNoise = (leastLevelInReadNoise * noise.readNoiseElectrons) / noise.fullScaleElectrons
  for (let y = 0, to = 0; y < height; y++) {
    const top = Math.max(y - radius, 0)
    const bottom = Math.min(y + radius + 1, height)
    for (let x = 0; x < width; x++, to += 3) {
      const left = Math.max(x - radius, 0)
      const right = Math.min(x + radius + 1, width)
      const [a, b, c, d] = [
        bottom * stride + right * 4,
        top * stride + right * 4,
        bottom * stride + left * 4,
        top * stride + left * 4,
      ]
      const n = sums[a + 3] - sums[b + 3] - sums[c + 3] + sums[d + 3]
      if (n < leastValidShare * (right - left) * (bottom - top)) continue
      const red = (sums[a] - sums[b] - sums[c] + sums[d]) / n
      const green = (sums[a + 1] - sums[b + 1] - sums[c + 1] + sums[d + 1]) / n
      const blue = (sums[a + 2] - sums[b + 2] - sums[c + 2] + sums[d + 2]) / n
      rgb[to] = red
      rgb[to + 1] = green
      rgb[to + 2] = blue
      const drowned = Math.min(red, green, blue) <= readNoise / Math.sqrt(n * count)
      if (!drowned && logRatioNoise(red, blue, noise, n * count) <= mostNoiseStops) valid[to / 3] = 1
    }
  }
  return { width, height, rgb, valid, unsmoothed: cells, unclipped, photosites: count, radius, step }
}
