// The overview as a small plane of smoothed colour that a mask is made on: at most half a million cells, which holds every
// edge that a change of light shows.
import type { Overview } from '../../frame/frame.ts'
import { boxSums } from '../box-sums.ts'

export interface LightPlane {
  readonly width: number
  readonly height: number
  /** log2 of red, and of red and blue to green; not finite where the light is lost in noise. */
  readonly log2Red: Float32Array
  readonly u: Float32Array
  readonly v: Float32Array
}

const mostCells = 500_000

/** Radius in cells of the boxes that quieten noise (tuned by simulation). */
const smoothing = 1

/** Columns and rows of cells, and the overview pixels along each axis that make one. */
export function lightCells(overview: Pick<Overview, 'width' | 'height'>) {
  const step = Math.max(1, Math.ceil(Math.sqrt((overview.width * overview.height) / mostCells)))
  const along = (pixels: number) => Math.max(1, Math.floor(pixels / step))
  return { width: along(overview.width), height: along(overview.height), step }
}

/** Means over cells of the values at `first` and every `stride` further, one for each overview pixel. */
export function meansOverCells(
  values: Float32Array,
  overview: Pick<Overview, 'width' | 'height'>,
  first = 0,
  stride = 1,
): Float32Array {
  const { width, height, step } = lightCells(overview)
  const plane = new Float32Array(width * height)
  for (let y = 0; y < height * step; y++) {
    const row = Math.floor(y / step) * width
    for (let x = 0; x < width * step; x++) {
      plane[row + Math.floor(x / step)] += values[(y * overview.width + x) * stride + first] / (step * step)
    }
  }
  return plane
}

export function makeLightPlane(overview: Overview): LightPlane {
  const { width, height } = lightCells(overview)
  const [red, green, blue] = [0, 1, 2].map((channel) =>
    boxSums(meansOverCells(overview.rgba, overview, channel, 4), width, height, smoothing),
  )
  const counts = boxSums(new Float32Array(red.length).fill(1), width, height, smoothing)
  return {
    width,
    height,
    log2Red: red.map((value, i) => Math.log2(Math.max(value / counts[i], 0))),
    u: red.map((value, i) => Math.log2(Math.max(value / green[i], 0))),
    v: blue.map((value, i) => Math.log2(Math.max(value / green[i], 0))),
  }
}
