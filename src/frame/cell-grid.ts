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

/** Noise of log2(R/B) in stops, for means r and b over `photosites` of each. */
export function logRatioNoise(r: number, b: number, noise: NoiseModel, photosites: number): number {
  const { fullScaleElectrons: full, readNoiseElectrons: read } = noise
  const share = (value: number) => (Math.max(value, 0) * full + read * read) / (value * value)
  return Math.sqrt((share(r) + share(b)) / photosites) / (full * Math.LN2)
}

/** Sums of a plane over all rectangles from the origin; one row and one column of zeros lead. */
function integral(plane: (cell: number) => number, width: number, height: number): Float64Array {
  const sums = new Float64Array((width + 1) * (height + 1))
  for (let y = 0, cell = 0; y < height; y++) {
    let row = 0
    for (let x = 0; x < width; x++, cell++) {
      row += plane(cell)
      sums[(y + 1) * (width + 1) + x + 1] = sums[y * (width + 1) + x + 1] + row
    }
  }
  return sums
}

/** The overview averaged in squares of `step` pixels: interleaved RGB, and 1 where none of them is clipped. */
function reduce(overview: Overview, step: number, width: number, height: number) {
  const { rgba } = overview
  const rgb = new Float32Array(width * height * 3)
  const unclipped = new Uint8Array(width * height)
  for (let y = 0, cell = 0; y < height; y++) {
    for (let x = 0; x < width; x++, cell++) {
      let most = 0
      for (let row = y * step; row < (y + 1) * step; row++) {
        for (let i = (row * overview.width + x * step) * 4, end = i + step * 4; i < end; i += 4) {
          rgb[cell * 3] += rgba[i] / (step * step)
          rgb[cell * 3 + 1] += rgba[i + 1] / (step * step)
          rgb[cell * 3 + 2] += rgba[i + 2] / (step * step)
          if (rgba[i + 3] > most) most = rgba[i + 3]
        }
      }
      if (most < clippingLevel) unclipped[cell] = 1
    }
  }
  return { rgb, unclipped }
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
  for (let cell = 0; cell < unclipped.length; cell++) {
    const stops = logRatioNoise(cells[cell * 3], cells[cell * 3 + 2], noise, count)
    if (unclipped[cell] && Number.isFinite(stops)) noises.push(stops)
  }
  const wanted = noises.length ? Math.ceil((median(noises) / wantedNoiseStops - 1) / 2) : 1
  const radius = Math.min(Math.max(wanted, 1), largestRadius)

  const sums = [0, 1, 2].map((c) => integral((cell) => (unclipped[cell] ? cells[cell * 3 + c] : 0), width, height))
  const whole = integral((cell) => unclipped[cell], width, height)
  const rgb = new Float32Array(width * height * 3)
  const valid = new Uint8Array(width * height)
  for (let y = 0, cell = 0; y < height; y++) {
    const top = Math.max(y - radius, 0) * (width + 1)
    const bottom = Math.min(y + radius + 1, height) * (width + 1)
    for (let x = 0; x < width; x++, cell++) {
      const left = Math.max(x - radius, 0)
      const right = Math.min(x + radius + 1, width)
      const inBox = (plane: Float64Array) =>
        plane[bottom + right] - plane[top + right] - plane[bottom + left] + plane[top + left]
      const n = inBox(whole)
      if (n < (leastValidShare * (right - left) * (bottom - top)) / (width + 1)) continue
      for (let c = 0; c < 3; c++) rgb[cell * 3 + c] = inBox(sums[c]) / n
      const floor =
        (leastLevelInReadNoise * noise.readNoiseElectrons) / (noise.fullScaleElectrons * Math.sqrt(n * count))
      const dark = Math.min(rgb[cell * 3], rgb[cell * 3 + 1], rgb[cell * 3 + 2]) <= floor
      if (dark || logRatioNoise(rgb[cell * 3], rgb[cell * 3 + 2], noise, n * count) > mostNoiseStops) continue
      valid[cell] = 1
    }
  }
  return { width, height, rgb, valid, unsmoothed: cells, unclipped, photosites: count, radius, step }
}
