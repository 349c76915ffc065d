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

/** Overview pixels along each axis that make one cell. */
export const cellStep = ({ width, height }: Pick<Overview, 'width' | 'height'>) =>
  Math.max(1, Math.ceil(Math.sqrt((width * height) / mostCells)))
/** Radius in cells of the boxes that quieten noise (tuned by simulation). */
const smoothing = 1

/** Means of one channel over squares of `step` overview pixels. */
function reduceChannel({ width, rgba }: Overview, channel: number, step: number, columns: number, rows: number) {
  const plane = new Float32Array(columns * rows)
  for (let y = 0; y < rows * step; y++) {
    const row = Math.floor(y / step) * columns
    for (let x = 0; x < columns * step; x++) {
      plane[row + Math.floor(x / step)] += rgba[(y * width + x) * 4 + channel] / (step * step)
    }
  }
  return plane
}

export function makeLightPlane(overview: Overview): LightPlane {
  const step = cellStep(overview)
  const width = Math.max(1, Math.floor(overview.width / step))
  const height = Math.max(1, Math.floor(overview.height / step))
  const [red, green, blue] = [0, 1, 2].map((channel) =>
    boxSums(reduceChannel(overview, channel, step, width, height), width, height, smoothing),
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
