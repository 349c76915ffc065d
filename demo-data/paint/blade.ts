// One broad leaf seen close: egg-shaped, folded along its midrib so that the halves catch the light differently, with veins
// once they are wide enough to see. Small leaves fall back to a plain pointed shape of the same area.
import { type Band, coverIndex } from './canvas.ts'
import type { Brush } from './brush.ts'
import { noise2 } from './noise.ts'
import { drawLeaf } from './shapes.ts'

const plainBelowPx = 7
const veinsFromPx = 22
const mottledFromPx = 36
/** Half-width over length from which a leaf is heart-shaped: rounded at the base, tapering to its tip. */
const heartFrom = 0.36

/**
 * Draws a leaf from base (x0, y0) to tip (x1, y1), frame pixels, half-width `halfWidth` px. `fold` −1…1 makes the right half
 * (seen from base to tip) brighter and the left half darker by that share; it also bends the leaf a little to one side.
 */
export function drawBlade(
  band: Band,
  x0: number,
  y0: number,
  x1: number,
  y1: number,
  halfWidth: number,
  fold: number,
  brush: Brush,
): void {
  const dx = x1 - x0
  const dy = y1 - y0
  const length = Math.sqrt(dx * dx + dy * dy)
  if (length < plainBelowPx || halfWidth < 1.2) {
    drawLeaf(band, x0, y0, dx, dy, halfWidth, 1, brush)
    return
  }
  const ux = dx / length
  const uy = dy / length
  const half = length / 2
  const cx = x0 + dx / 2
  const cy = y0 + dy / 2
  const reach = halfWidth * 1.1
  const bend = fold * 1.6 * halfWidth
  const reachX = Math.abs(ux) * half + Math.abs(uy) * (reach + Math.abs(bend)) + 0.5
  const reachY = Math.abs(uy) * half + Math.abs(ux) * (reach + Math.abs(bend)) + 0.5
  const top = Math.max(band.y0, Math.floor(cy - reachY))
  const bottom = Math.min(band.y1 - 1, Math.floor(cy + reachY))
  const left = Math.max(0, Math.floor(cx - reachX))
  const right = Math.min(band.width - 1, Math.floor(cx + reachX))
  const { r, g, b } = brush
  const veined = length > veinsFromPx
  const rib = Math.max(0.4, halfWidth * 0.05)
  const heart = halfWidth / length > heartFrom
  const mottled = length > mottledFromPx
  const grain = 9 / length
  for (let py = top; py <= bottom; py++) {
    const ry = py + 0.5 - cy
    const row = (py - band.y0) * band.width
    for (let px = left; px <= right; px++) {
      const rx = px + 0.5 - cx
      const u = (rx * ux + ry * uy) / half
      if (u < -1 || u > 1) continue
      const side = ry * ux - rx * uy - bend * (0.6 - u * u)
      const v = side < 0 ? -side : side
      const outline = heart ? 0.94 * (1 - u) ** 0.8 * (1 + u) ** 0.38 : (1 - u * u) * (1 - 0.28 * u)
      const c = halfWidth * outline - v + 0.5
      if (c <= 0) continue
      const across = v / halfWidth
      let shade = (1 + (side < 0 ? -fold : fold) * (0.45 + 0.55 * across)) * (1 - 0.7 * fold * u)
      if (veined) {
        shade *= v < rib ? 1.16 : 1 + 0.055 * Math.cos((u * 5.5 - across * 2) * 6.28)
        if (mottled) shade *= 1 + 0.09 * noise2(rx * grain + x0, ry * grain + y0)
      }
      brush.r = r * shade
      brush.g = g * shade
      brush.b = b * shade
      coverIndex(band, row + px, c > 1 ? 1 : c, brush)
    }
  }
  brush.r = r
  brush.g = g
  brush.b = b
}
