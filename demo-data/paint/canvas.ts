// A band of the picture in linear camera RGB (white in full sun and sky = 1 in its largest channel; brighter is allowed),
// with its ground truth. Coverage is blended in linear light, far to near: analytic edges replace supersampling.
import type { Brush } from './brush.ts'

export interface Band {
  /** Size of the whole frame in pixels. */
  readonly width: number
  readonly height: number
  /** Rows of the frame held here: y0 ≤ y < y1. */
  readonly y0: number
  readonly y1: number
  readonly r: Float32Array
  readonly g: Float32Array
  readonly b: Float32Array
  /** Material id of the topmost thing that covers more than half of the pixel; 0 = sky. */
  readonly material: Uint8Array
  /** Share of direct sun on that thing, 0…255. */
  readonly sun: Uint8Array
}

/** An empty band: black, material 0. */
export function createBand(width: number, height: number, y0: number, y1: number): Band {
  const n = (y1 - y0) * width
  return {
    width,
    height,
    y0,
    y1,
    r: new Float32Array(n),
    g: new Float32Array(n),
    b: new Float32Array(n),
    material: new Uint8Array(n),
    sun: new Uint8Array(n),
  }
}

/** Blends the brush over the pixel at index `i` of the band with `coverage` 0…1. */
export function coverIndex(band: Band, i: number, coverage: number, brush: Brush): void {
  const keep = 1 - coverage
  band.r[i] = band.r[i] * keep + brush.r * coverage
  band.g[i] = band.g[i] * keep + brush.g * coverage
  band.b[i] = band.b[i] * keep + brush.b * coverage
  if (coverage > 0.5) {
    band.material[i] = brush.material
    band.sun[i] = brush.sun * 255 + 0.5
  }
}

/** Fills row `y` from x0 to x1 (continuous frame coordinates, x0 < x1) with exact horizontal overlap × `coverage`. */
export function coverSpan(band: Band, y: number, x0: number, x1: number, coverage: number, brush: Brush): void {
  if (y < band.y0 || y >= band.y1 || x1 <= 0 || x0 >= band.width) return
  const left = x0 < 0 ? 0 : x0
  const right = x1 > band.width ? band.width : x1
  const first = Math.floor(left)
  const last = Math.ceil(right) - 1
  const row = (y - band.y0) * band.width
  if (first >= last) {
    coverIndex(band, row + first, (right - left) * coverage, brush)
    return
  }
  coverIndex(band, row + first, (first + 1 - left) * coverage, brush)
  for (let x = first + 1; x < last; x++) coverIndex(band, row + x, coverage, brush)
  coverIndex(band, row + last, (right - last) * coverage, brush)
}
