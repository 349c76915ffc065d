// A long leaf as one continuous ribbon: folded along its midrib, tapering, its light changing smoothly from base to tip.
// Neighbouring pieces meet at the bisector of their joint, so nothing is painted twice and no joint shows.
import type { Brush } from './brush.ts'
import { type Band, coverIndex } from './canvas.ts'

/**
 * Numbers per point: column and row in frame pixels, half-width in pixels, brightness as a factor on the brush.
 */
export const ribbonStride = 4

/** Draws a ribbon of `count` points. `fold` −1…1 brightens one half and darkens the other; `rib` draws a midrib when wide. */
export function drawRibbon(band: Band, points: Float64Array, count: number, fold: number, brush: Brush): void {
  const { r, g, b } = brush
  for (let k = 0; k + 1 < count; k++) {
    const o = k * ribbonStride
    const x0 = points[o]
    const y0 = points[o + 1]
    const w0 = points[o + 2]
    const x1 = points[o + 4]
    const y1 = points[o + 5]
    const w1 = points[o + 6]
    const widest = Math.max(w0, w1, 0.5) + 1
    const top = Math.max(band.y0, Math.floor(Math.min(y0, y1) - widest))
    const bottom = Math.min(band.y1 - 1, Math.ceil(Math.max(y0, y1) + widest))
    if (top > bottom) continue
    const left = Math.max(0, Math.floor(Math.min(x0, x1) - widest))
    const right = Math.min(band.width - 1, Math.ceil(Math.max(x0, x1) + widest))
    const dx = x1 - x0
    const dy = y1 - y0
    const length = Math.sqrt(dx * dx + dy * dy) || 1e-6
    const ux = dx / length
    const uy = dy / length
    const [ax, ay] = joint(points, k, count, ux, uy)
    const [bx, by] = joint(points, k + 1, count, ux, uy)
    for (let py = top; py <= bottom; py++) {
      const ry = py + 0.5 - y0
      const row = (py - band.y0) * band.width
      for (let px = left; px <= right; px++) {
        const rx = px + 0.5 - x0
        if (rx * ax + ry * ay < 0 || (rx - dx) * bx + (ry - dy) * by >= 0) continue
        const t = Math.min(1, Math.max(0, (rx * ux + ry * uy) / length))
        const v = rx * -uy + ry * ux
        const w = w0 + (w1 - w0) * t
        const off = v < 0 ? -v : v
        const c = Math.min(w + 0.5 - off, 1, 2 * w)
        if (c <= 0) continue
        const side = v / (w + 0.5)
        let shade = points[o + 3] + (points[o + 7] - points[o + 3]) * t
        shade *= 1 + fold * (side < -0.12 ? -1 : side > 0.12 ? 1 : side / 0.12)
        if (w > 3) shade *= off < 0.1 * w ? 1.12 : 1 + 0.06 * Math.cos((off / w) * 22)
        brush.r = r * shade
        brush.g = g * shade
        brush.b = b * shade
        coverIndex(band, row + px, c, brush)
      }
    }
  }
  brush.r = r
  brush.g = g
  brush.b = b
}

/** Normal of the line on which the pieces around point `k` meet. */
function joint(points: Float64Array, k: number, count: number, ux: number, uy: number): [number, number] {
  if (k === 0 || k === count - 1) return [ux, uy]
  const o = k * ribbonStride
  const bx = points[o] - points[o - 4]
  const by = points[o + 1] - points[o - 3]
  const ax = points[o + 4] - points[o]
  const ay = points[o + 5] - points[o + 1]
  const before = Math.sqrt(bx * bx + by * by) || 1e-6
  const after = Math.sqrt(ax * ax + ay * ay) || 1e-6
  const x = bx / before + ax / after
  const y = by / before + ay / after
  return x * x + y * y < 0.05 ? [ux, uy] : [x, y]
}
