// The ground of a wood: a trodden path through leaf litter and low green. Colours one point at a time, in metres.
import type { Palette } from '../light/triplets.ts'
import { type Brush, lightMix, scale } from './brush.ts'
import { type Cells, cells2, fbm2 } from './noise.ts'

export interface ForestFloor {
  /**
   * Sets the brush for the ground at (x, z). `offPath` = metres from the edge of the path, negative on it; `fp` = width of a
   * pixel in metres; sun and canopy as in `light`.
   */
  colour(
    brush: Brush,
    x: number,
    z: number,
    offPath: number,
    fp: number,
    sun: number,
    sky: number,
    canopy: number,
  ): void
}

export function createForestFloor(palette: Palette, seed: number): ForestFloor {
  const litter = palette.of('driedLeaf')
  const soil = palette.of('soil')
  const gravel = palette.of('gravel')
  const green = palette.of('grass')
  const near: Cells = { f1: 0, f2: 0, id: 0 }
  return {
    colour(brush, x, z, offPath, fp, sun, sky, canopy) {
      const broad = fbm2(x / 1.7, z / 1.7, 3, seed)
      const fine = fbm2(x / 0.06, z / 0.06, 7, seed + 4, fp / 0.06)
      const edge = Math.max(0, Math.min(1, 0.5 + (offPath + 0.3 * broad + 0.12 * fine) / 0.5))
      let flake = 0
      let gap = 0
      if (fp < 0.03) {
        const fade = 1 - fp / 0.03
        cells2(x / 0.055 + 0.35 * fine, z / 0.04 + 0.3 * fine, seed + 9, near)
        flake = fade * (((near.id >>> 5) & 255) / 127.5 - 1)
        gap = fade * Math.max(0, 1 - (near.f2 - near.f1) * 3.5)
      }
      const step = Math.max(0.006, fp)
      const lump = fbm2(x / 0.13, z / 0.13, 5, seed + 14, fp / 0.13)
      const slope =
        ((fbm2((x + 0.7 * step) / 0.13, (z + 0.7 * step) / 0.13, 5, seed + 14, fp / 0.13) - lump) * 0.012) / step
      const grain = 1 + 0.34 * fine + 0.9 * slope
      if (edge > 0.5) {
        const moss = Math.max(0, Math.min(1, (broad + 0.4 * fine) * 1.6 + 0.1))
        lightMix(brush, litter, green, moss * 0.8, sun, sky, 0, canopy)
        scale(brush, Math.max(0.1, (0.62 + 0.26 * flake * (1 - 0.6 * moss)) * grain * (1 - 0.55 * gap * (1 - moss))))
      } else {
        const worn = Math.max(0, Math.min(1, 0.55 + 0.6 * broad + 0.3 * fine))
        lightMix(brush, soil, worn > 0.4 ? gravel : litter, Math.abs(worn - 0.4) * 1.6, sun, sky, 0, canopy)
        scale(brush, Math.max(0.1, 1.15 * grain * (1 + 0.12 * flake) * (1 - 0.2 * gap)))
      }
    },
  }
}
