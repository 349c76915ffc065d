// Small shapes with analytic coverage, in continuous frame pixels: leaves, dots, limbs, convex patches.
// Things thinner than a pixel keep their area by becoming fainter, so they never flicker or vanish with the frame size.
import { type Band, coverIndex } from './canvas.ts'
import type { Brush } from './brush.ts'

/** A disc of radius `radius` px about (cx, cy), its edge one pixel soft. */
export function drawDisc(band: Band, cx: number, cy: number, radius: number, coverage: number, brush: Brush): void {
  const thin = radius < 0.5 ? (radius * radius) / 0.25 : 1
  const r = radius < 0.5 ? 0.5 : radius
  const top = Math.max(band.y0, Math.floor(cy - r - 0.5))
  const bottom = Math.min(band.y1 - 1, Math.ceil(cy + r - 0.5))
  const left = Math.max(0, Math.floor(cx - r - 0.5))
  const right = Math.min(band.width - 1, Math.ceil(cx + r - 0.5))
  for (let y = top; y <= bottom; y++) {
    const dy = y + 0.5 - cy
    for (let x = left; x <= right; x++) {
      const dx = x + 0.5 - cx
      const c = r + 0.5 - Math.sqrt(dx * dx + dy * dy)
      if (c > 0) coverIndex(band, (y - band.y0) * band.width + x, (c > 1 ? 1 : c) * thin * coverage, brush)
    }
  }
}

/** A pointed leaf from (x, y) to (x + dx, y + dy), half-width `halfWidth`·(1 − u²) with u −1…1 along it. */
export function drawLeaf(
  band: Band,
  x: number,
  y: number,
  dx: number,
  dy: number,
  halfWidth: number,
  coverage: number,
  brush: Brush,
): void {
  const length = Math.sqrt(dx * dx + dy * dy)
  if (length < 1.6) {
    drawDisc(band, x + dx / 2, y + dy / 2, Math.sqrt((length * halfWidth * 4) / 3 / Math.PI), coverage, brush)
    return
  }
  const ux = dx / length
  const uy = dy / length
  const half = length / 2
  const cx = x + dx / 2
  const cy = y + dy / 2
  const reachX = Math.abs(ux) * half + Math.abs(uy) * halfWidth + 0.5
  const reachY = Math.abs(uy) * half + Math.abs(ux) * halfWidth + 0.5
  const top = Math.max(band.y0, Math.floor(cy - reachY))
  const bottom = Math.min(band.y1 - 1, Math.floor(cy + reachY))
  const left = Math.max(0, Math.floor(cx - reachX))
  const right = Math.min(band.width - 1, Math.floor(cx + reachX))
  const widest = Math.min(1, halfWidth * 2)
  for (let py = top; py <= bottom; py++) {
    const ry = py + 0.5 - cy
    const row = (py - band.y0) * band.width
    for (let px = left; px <= right; px++) {
      const rx = px + 0.5 - cx
      const u = (rx * ux + ry * uy) / half
      if (u < -1 || u > 1) continue
      const v = Math.abs(ry * ux - rx * uy)
      const c = halfWidth * (1 - u * u) - v + 0.5
      if (c > 0) coverIndex(band, row + px, (c > widest ? widest : c) * coverage, brush)
    }
  }
}

/**
 * A tapering limb from (x0, y0) with half-width w0 to (x1, y1) with half-width w1. `tilt` −1…1 darkens one side: the colour
 * runs from 1 − |tilt| to 1 + |tilt| across, brighter on the right where positive.
 */
export function drawLimb(
  band: Band,
  x0: number,
  y0: number,
  w0: number,
  x1: number,
  y1: number,
  w1: number,
  tilt: number,
  brush: Brush,
): void {
  const dx = x1 - x0
  const dy = y1 - y0
  const square = dx * dx + dy * dy
  const length = Math.sqrt(square) || 1
  const widest = Math.max(w0, w1)
  const top = Math.max(band.y0, Math.floor(Math.min(y0, y1) - widest - 0.5))
  const bottom = Math.min(band.y1 - 1, Math.floor(Math.max(y0, y1) + widest + 0.5))
  const { r, g, b } = brush
  const across = (dy < 0 ? -1 : 1) / length
  for (let y = top; y <= bottom; y++) {
    const ry = y + 0.5 - y0
    const near = dy === 0 ? 0 : Math.min(1, Math.max(0, ry / dy))
    const slack = (widest + 1) * (Math.abs(dy) > 1e-6 ? Math.min(length / Math.abs(dy), 1e4) : 1e4)
    const middle = x0 + near * dx
    const from = Math.max(0, Math.floor(Math.max(middle - slack, Math.min(x0, x1) - widest - 1)))
    const to = Math.min(band.width - 1, Math.ceil(Math.min(middle + slack, Math.max(x0, x1) + widest + 1)))
    const row = (y - band.y0) * band.width
    for (let x = from; x <= to; x++) {
      const rx = x + 0.5 - x0
      const along = square > 0 ? Math.min(1, Math.max(0, (rx * dx + ry * dy) / square)) : 0
      const ox = rx - along * dx
      const oy = ry - along * dy
      const w = w0 + (w1 - w0) * along
      const c = w + 0.5 - Math.sqrt(ox * ox + oy * oy)
      if (c <= 0) continue
      const side = ((rx * dy - ry * dx) * across) / (w + 0.5)
      const shade = 1 + tilt * (side < -1 ? -1 : side > 1 ? 1 : side)
      brush.r = r * shade
      brush.g = g * shade
      brush.b = b * shade
      coverIndex(band, row + x, Math.min(c, 1, 2 * w), brush)
    }
  }
  brush.r = r
  brush.g = g
  brush.b = b
}

/**
 * A convex patch with corners (xs[i], ys[i]) in either turning sense. `shade` is called for every covered pixel with its
 * centre and sets the brush; it may return the share 0…1 of the pixel that is covered, to cut a shape out.
 */
export function drawPatch(
  band: Band,
  xs: readonly number[],
  ys: readonly number[],
  brush: Brush,
  shade: (x: number, y: number) => number | undefined | void,
): void {
  const n = xs.length
  let area = 0
  for (let i = 0; i < n; i++) area += xs[i] * ys[(i + 1) % n] - xs[(i + 1) % n] * ys[i]
  const sense = area < 0 ? -1 : 1
  const edges = xs.map((x, i) => {
    const ex = xs[(i + 1) % n] - x
    const ey = ys[(i + 1) % n] - ys[i]
    const length = Math.hypot(ex, ey) || 1
    return { x, y: ys[i], nx: (-ey / length) * sense, ny: (ex / length) * sense }
  })
  const top = Math.max(band.y0, Math.floor(Math.min(...ys) - 0.5))
  const bottom = Math.min(band.y1 - 1, Math.floor(Math.max(...ys) + 0.5))
  const left = Math.max(0, Math.floor(Math.min(...xs) - 0.5))
  const right = Math.min(band.width - 1, Math.floor(Math.max(...xs) + 0.5))
  for (let y = top; y <= bottom; y++) {
    const row = (y - band.y0) * band.width
    for (let x = left; x <= right; x++) {
      let c = 1
      for (const edge of edges) {
        const d = (x + 0.5 - edge.x) * edge.nx + (y + 0.5 - edge.y) * edge.ny + 0.5
        if (d < c) c = d
        if (c <= 0) break
      }
      if (c <= 0) continue
      const share = shade(x + 0.5, y + 0.5)
      coverIndex(band, row + x, share === undefined ? c : c * share, brush)
    }
  }
}
