// The damp, lit air of a wood: distances fade into light that comes from ahead, brightest over the clearing where the path
// leads. Also the backdrop behind the last trees, which is that air and nothing else.
import type { Palette } from '../light/triplets.ts'
import { type Brush, createBrush, light } from './brush.ts'
import type { Camera } from './camera.ts'
import { type Band, coverIndex } from './canvas.ts'

export interface WoodAir {
  /** Fades the brush as seen through the air in front of (x, y, z). */
  veil(brush: Brush, x: number, y: number, z: number): void
  paintBackground(band: Band): void
}

/** Distance over which 1/e of the contrast is left, and where the air begins, metres. By eye, without a source. */
const rangeM = 68
const clearM = 4
/** Nothing is seen beyond this distance. */
const lastM = 70

export function createWoodAir(palette: Palette, camera: Camera): WoodAir {
  const lit = createBrush()
  light(lit, palette.of('white'), 0.2, 0.6, 0, 0.06)
  const glow = (across: number, up: number) => {
    const dx = (across - 0.02) / 0.3
    const dy = (up - 0.12) / 0.4
    return 0.62 + 0.75 * Math.exp(-(dx * dx + dy * dy)) + 0.25 * Math.max(0, across + 0.2)
  }
  return {
    veil(brush, x, y, z) {
      if (z <= clearM) return
      const k = Math.exp(-(z - clearM) / rangeM) * Math.min(1, Math.max(0, (lastM - z) / (lastM - 30)))
      const w = (1 - k) * glow(x / z, (y - camera.eyeM) / z)
      brush.r = brush.r * k + lit.r * w
      brush.g = brush.g * k + lit.g * w
      brush.b = brush.b * k + lit.b * w
    },
    paintBackground(band) {
      const brush = createBrush()
      for (let y = band.y0; y < band.y1; y++) {
        const up = (camera.horizonY - y - 0.5) / camera.focalPx
        for (let x = 0; x < band.width; x++) {
          const g = glow((x + 0.5 - camera.centreX) / camera.focalPx, up)
          brush.r = lit.r * g
          brush.g = lit.g * g
          brush.b = lit.b * g
          coverIndex(band, (y - band.y0) * band.width + x, 1, brush)
        }
      }
    },
  }
}
