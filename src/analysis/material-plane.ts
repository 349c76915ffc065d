// What a frame's places are made of, as far as colour behind a filter tells it: log2 of red to blue of `cameraRgb` against the
// frame's grey, in stops. Foliage lies far below 0, sky above it. Smoothed along edges, because single pixels are mostly noise there.
import type { Overview } from '../frame/frame.ts'
import { clippingLevel } from '../frame/cell-grid.ts'
import { boxSums } from './box-sums.ts'
import { guidedFilter } from './two-lights/guided-filter.ts'

/** Radius in overview pixels of the means that quieten noise, and of the windows that follow edges. */
const meanRadius = 1
const edgeRadius = 3
/** What it takes for an edge of log2 red, in stops². */
const edgeEpsilon = 0.02
/** Nothing known is redder or bluer than this against grey, in stops; what noise makes of dark places is held here. */
const furthestStops = 3

export interface MaterialPlane {
  readonly width: number
  readonly height: number
  /** Row by row, in stops against grey; 0 where light is clipped. */
  readonly data: Float32Array
}

const hold = (value: number) => Math.min(Math.max(value, -furthestStops), furthestStops)

/** The plane of an overview whose grey has log2 R/B of `greyStops`. */
export function materialPlane({ width, height, rgba }: Overview, greyStops: number): MaterialPlane {
  const red = new Float32Array(width * height)
  const blue = new Float32Array(width * height)
  const clipped = new Uint8Array(width * height)
  for (let i = 0; i < red.length; i++) {
    clipped[i] = rgba[i * 4 + 3] >= clippingLevel ? 1 : 0
    red[i] = clipped[i] ? 0 : rgba[i * 4]
    blue[i] = clipped[i] ? 0 : rgba[i * 4 + 2]
  }
  const redSums = boxSums(red, width, height, meanRadius)
  const blueSums = boxSums(blue, width, height, meanRadius)
  const ratio = redSums.map((sum, i) => {
    const stops = clipped[i] ? 0 : Math.log2(Math.max(sum, 0) / Math.max(blueSums[i], 0)) - greyStops
    return Number.isNaN(stops) ? 0 : hold(stops)
  })
  const floor = 2 ** -14
  const guide = red.map((value, i) => Math.log2(Math.max(clipped[i] ? 1 : value, floor)))
  return { width, height, data: guidedFilter(ratio, guide, width, height, edgeRadius, edgeEpsilon) }
}
