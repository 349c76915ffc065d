// Leaves and limbs already projected and coloured, kept in one list sorted by depth, so that any band can be painted far to
// near. Solid things (trunks, pots) join the same order. A flat array keeps half a million strokes at 30 MB.
import { drawBlade } from './blade.ts'
import { type Brush, createBrush } from './brush.ts'
import type { Band } from './canvas.ts'
import { drawRoughLimb } from './rough-limb.ts'
import { drawLimb } from './shapes.ts'

/** Numbers per stroke: distance, start x y, end x y, half-widths, tilt, colour, material, sun, leaf or limb. */
export const strokeStride = 14
/** Half-width in pixels from which a limb shows its bark. */
const roughFromPx = 3

export interface Strokes {
  data: Float32Array
  count: number
  /** Indices far to near, made by `sortStrokes`. */
  order: Uint32Array
}

/** Something that paints itself when everything farther away has been painted. */
export interface Solid {
  /** Distance in metres. */
  readonly z: number
  paint(band: Band): void
}

export function createStrokes(): Strokes {
  return { data: new Float32Array(strokeStride * 4096), count: 0, order: new Uint32Array(0) }
}

function add(
  strokes: Strokes,
  z: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  w0: number,
  w1: number,
  tilt: number,
  brush: Brush,
  leaf: boolean,
): void {
  const at = strokes.count * strokeStride
  if (at + strokeStride > strokes.data.length) {
    const larger = new Float32Array(strokes.data.length * 2)
    larger.set(strokes.data)
    strokes.data = larger
  }
  const d = strokes.data
  d[at] = z
  d[at + 1] = x0
  d[at + 2] = y0
  d[at + 3] = x1
  d[at + 4] = y1
  d[at + 5] = w0
  d[at + 6] = w1
  d[at + 7] = tilt
  d[at + 8] = brush.r
  d[at + 9] = brush.g
  d[at + 10] = brush.b
  d[at + 11] = brush.material
  d[at + 12] = brush.sun
  d[at + 13] = leaf ? 1 : 0
  strokes.count++
}

/** Adds a leaf from base to tip in frame pixels; `fold` as in `drawBlade`. */
export function addLeafStroke(
  strokes: Strokes,
  z: number,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  halfWidth: number,
  fold: number,
  brush: Brush,
): void {
  add(strokes, z, x0, y0, x1, y1, halfWidth, 0, fold, brush, true)
}

/** Adds a tapering limb in frame pixels; `tilt` as in `drawLimb`. */
export function addLimbStroke(
  strokes: Strokes,
  z: number,
  x0: number,
  y0: number,
  w0: number,
  x1: number,
  y1: number,
  w1: number,
  tilt: number,
  brush: Brush,
): void {
  add(strokes, z, x0, y0, x1, y1, w0, w1, tilt, brush, false)
}

/** Sorts far to near. Distances below 400 m are told apart to .1 mm. */
export function sortStrokes(strokes: Strokes): void {
  const n = strokes.count
  const keys = new Float64Array(n)
  for (let i = 0; i < n; i++) keys[i] = Math.round(strokes.data[i * strokeStride] * 1e4) * 2097152 + i
  keys.sort()
  strokes.order = new Uint32Array(n)
  for (let i = 0; i < n; i++) strokes.order[n - 1 - i] = keys[i] % 2097152
}

/** Paints all strokes and solids that touch the band, far to near. `solids` must be sorted far to near. */
export function paintStrokes(band: Band, strokes: Strokes, solids: readonly Solid[] = []): void {
  const brush = createBrush()
  const d = strokes.data
  let next = 0
  for (const index of strokes.order) {
    const at = index * strokeStride
    while (next < solids.length && solids[next].z >= d[at]) solids[next++].paint(band)
    const leaf = d[at + 13] > 0
    const y0 = d[at + 2]
    const y1 = d[at + 4]
    const reach = (leaf ? d[at + 5] * (1.1 + 1.6 * Math.abs(d[at + 7])) : Math.max(d[at + 5], d[at + 6]) * 1.12) + 1
    if ((y0 > y1 ? y0 : y1) + reach < band.y0 || (y0 < y1 ? y0 : y1) - reach > band.y1) continue
    brush.r = d[at + 8]
    brush.g = d[at + 9]
    brush.b = d[at + 10]
    brush.material = d[at + 11]
    brush.sun = d[at + 12]
    if (leaf) drawBlade(band, d[at + 1], y0, d[at + 3], y1, d[at + 5], d[at + 7], brush)
    else if (d[at + 5] > roughFromPx)
      drawRoughLimb(band, d[at + 1], y0, d[at + 5], d[at + 3], y1, d[at + 6], d[at + 7], d[at], brush)
    else drawLimb(band, d[at + 1], y0, d[at + 5], d[at + 3], y1, d[at + 6], d[at + 7], brush)
  }
  while (next < solids.length) solids[next++].paint(band)
}
