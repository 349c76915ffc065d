// What the lens does to a painted band before light reaches the sensor: a small blur, falloff towards the corners and,
// where the frame asks for it, the pale disc that some lenses show in infrared.
import { type Band, createBand } from '../paint/canvas.ts'
import type { Size } from '../paint/scene.ts'

/** Rows above and below a band that its blur needs. */
export const apronRows = 2

/** A hot spot: gain at the centre per channel, and its radius in half-widths of the picture. */
export interface HotSpot {
  readonly gain: readonly [number, number, number]
  readonly radius: number
}

/** Standard deviation of the blur in pixels, tuned by eye: sharp, yet without stair steps. */
const blurPx = 0.6
const tap = [0, 1, 2].map((k) => Math.exp((-k * k) / (2 * blurPx * blurPx)))
const sum = tap[0] + 2 * (tap[1] + tap[2])
const [t0, t1, t2] = tap.map((v) => v / sum)

function blurPlane(plane: Float32Array, width: number, rows: number): void {
  const line = new Float32Array(width + 4)
  for (let y = 0; y < rows; y++) {
    const at = y * width
    for (let x = -2; x < width + 2; x++) line[x + 2] = plane[at + Math.min(width - 1, Math.max(0, x))]
    for (let x = 0; x < width; x++)
      plane[at + x] = t0 * line[x + 2] + t1 * (line[x + 1] + line[x + 3]) + t2 * (line[x] + line[x + 4])
  }
  let two = plane.slice(0, width)
  let one = two
  let here = plane.slice(0, width)
  for (let y = 0; y < rows; y++) {
    const at = y * width
    const below = Math.min(rows - 1, y + 1) * width
    const below2 = Math.min(rows - 1, y + 2) * width
    const saved = here
    for (let x = 0; x < width; x++)
      plane[at + x] = t0 * saved[x] + t1 * (one[x] + plane[below + x]) + t2 * (two[x] + plane[below2 + x])
    two = one
    one = saved
    here = plane.slice(below, below + width)
  }
}

/** Brightness that reaches (x, y) for channel `c`, 1 at the centre of a plain lens: 1 ÷ (1 + .14 q²), q = distance² in half-widths. */
export function lensGain(size: Size, hotSpot: HotSpot | undefined, x: number, y: number, c: number): number {
  const half = Math.max(size.width, size.height) / 2
  const dx = (x + 0.5 - size.width / 2) / half
  const dy = (y + 0.5 - size.height / 2) / half
  const q = dx * dx + dy * dy
  const falloff = 1 / (1 + 0.14 * q * q)
  if (!hotSpot) return falloff
  const r = Math.sqrt(q) / hotSpot.radius
  return falloff * (1 + (hotSpot.gain[c] - 1) / (1 + r ** 5))
}

/** Blurs a band that was painted with its apron and returns the rows y0…y1 without it. */
export function throughLens(painted: Band, y0: number, y1: number): Band {
  const rows = painted.y1 - painted.y0
  for (const plane of [painted.r, painted.g, painted.b]) blurPlane(plane, painted.width, rows)
  const out = createBand(painted.width, painted.height, y0, y1)
  const from = (y0 - painted.y0) * painted.width
  const to = from + (y1 - y0) * painted.width
  out.r.set(painted.r.subarray(from, to))
  out.g.set(painted.g.subarray(from, to))
  out.b.set(painted.b.subarray(from, to))
  out.material.set(painted.material.subarray(from, to))
  out.sun.set(painted.sun.subarray(from, to))
  return out
}
