// A limb wide enough to show its bark: round in the light, with furrows along it and small bumps on its outline.
// Everything scales with the limb's own width, so a branch looks alike at every frame size.
import type { Brush } from './brush.ts'
import { type Band, coverIndex } from './canvas.ts'
import { noise2 } from './noise.ts'

/**
 * Draws from (x0, y0) with half-width w0 to (x1, y1) with half-width w1, frame pixels. `tilt` −1…1: positive brightens the
 * right (or, on level limbs, upper) side. `place` is any number that makes this limb's bark its own.
 */
export function drawRoughLimb(
  band: Band,
  x0: number,
  y0: number,
  w0: number,
  x1: number,
  y1: number,
  w1: number,
  tilt: number,
  place: number,
  brush: Brush,
): void {
  const dx = x1 - x0
  const dy = y1 - y0
  const length = Math.sqrt(dx * dx + dy * dy) + 1e-6
  const ux = dx / length
  const uy = dy / length
  const widest = Math.max(w0, w1) * 1.12 + 1
  const top = Math.max(band.y0, Math.floor(Math.min(y0, y1) - widest))
  const bottom = Math.min(band.y1 - 1, Math.ceil(Math.max(y0, y1) + widest))
  const { r, g, b } = brush
  const lightX = tilt
  const lightY = -0.42
  for (let y = top; y <= bottom; y++) {
    const ry = y + 0.5 - y0
    const reach = Math.abs(uy) > 0.02 ? widest / Math.abs(uy) + 1 : 1e6
    const middle = Math.abs(uy) > 0.02 ? x0 + (ry / uy) * ux : x0
    const from = Math.max(0, Math.floor(Math.max(middle - reach, Math.min(x0, x1) - widest)))
    const to = Math.min(band.width - 1, Math.ceil(Math.min(middle + reach, Math.max(x0, x1) + widest)))
    const row = (y - band.y0) * band.width
    for (let x = from; x <= to; x++) {
      const rx = x + 0.5 - x0
      const s = rx * ux + ry * uy
      const t = s < 0 ? 0 : s > length ? 1 : s / length
      const w = w0 + (w1 - w0) * t
      const v = rx * -uy + ry * ux
      const past = s < 0 ? -s : s > length ? s - length : 0
      const bump = 1 + 0.1 * noise2(s / (w * 1.7) + place, v < 0 ? 0.5 : 7.5)
      const c = w * bump + 0.5 - Math.sqrt(v * v + past * past)
      if (c <= 0) continue
      const q = Math.max(-1, Math.min(1, v / w))
      const nx = -uy * q
      const ny = ux * q
      const furrow = noise2(s / (w * 1.1) + place, q * 2.6 + place) + 0.6 * noise2(s / (w * 0.35), q * 6 + place)
      const shade = (0.86 + lightX * nx + lightY * ny) * (1 - 0.25 * q * q) * (1 + 0.2 * furrow)
      const k = shade < 0.15 ? 0.15 : shade
      brush.r = r * k
      brush.g = g * k
      brush.b = b * k
      coverIndex(band, row + x, c > 1 ? 1 : c, brush)
    }
  }
  brush.r = r
  brush.g = g
  brush.b = b
}
