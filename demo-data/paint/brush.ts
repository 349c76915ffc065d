// The colour about to be painted: linear camera RGB plus what the ground truth should say. One mutable object per painter,
// because a frame needs hundreds of thousands of colours. Light is a weighted sum of a material's triplets.
import type { Material } from '../light/triplets.ts'

export interface Brush {
  r: number
  g: number
  b: number
  /** Material id. */
  material: number
  /** Share of direct sun 0…1. */
  sun: number
}

export function createBrush(): Brush {
  return { r: 0, g: 0, b: 0, material: 0, sun: 0 }
}

/**
 * Sets the brush to `material` under sun, clear sky, overcast and canopy light. Weights: sun = visible share × max(0, n·s),
 * sky and overcast = share of the hemisphere seen, canopy = share of light coming through leaves; 1 = full.
 */
export function light(brush: Brush, material: Material, sun: number, sky: number, overcast = 0, canopy = 0): void {
  const t = material.t
  brush.r = sun * t[0] + sky * t[3] + overcast * t[6] + canopy * t[9]
  brush.g = sun * t[1] + sky * t[4] + overcast * t[7] + canopy * t[10]
  brush.b = sun * t[2] + sky * t[5] + overcast * t[8] + canopy * t[11]
  brush.material = material.id
  brush.sun = sun < 0 ? 0 : sun > 1 ? 1 : sun
}

/** As `light`, for a mix: `share` 0…1 of `second`, the rest `first`. The ground truth names the larger part. */
export function lightMix(
  brush: Brush,
  first: Material,
  second: Material,
  share: number,
  sun: number,
  sky: number,
  overcast = 0,
  canopy = 0,
): void {
  const a = first.t
  const b = second.t
  const k = 1 - share
  brush.r = sun * (k * a[0] + share * b[0]) + sky * (k * a[3] + share * b[3])
  brush.g = sun * (k * a[1] + share * b[1]) + sky * (k * a[4] + share * b[4])
  brush.b = sun * (k * a[2] + share * b[2]) + sky * (k * a[5] + share * b[5])
  if (overcast || canopy) {
    brush.r += overcast * (k * a[6] + share * b[6]) + canopy * (k * a[9] + share * b[9])
    brush.g += overcast * (k * a[7] + share * b[7]) + canopy * (k * a[10] + share * b[10])
    brush.b += overcast * (k * a[8] + share * b[8]) + canopy * (k * a[11] + share * b[11])
  }
  brush.material = share > 0.5 ? second.id : first.id
  brush.sun = sun < 0 ? 0 : sun > 1 ? 1 : sun
}

/** Multiplies the colour, for instance by a texture's brightness. */
export function scale(brush: Brush, factor: number): void {
  brush.r *= factor
  brush.g *= factor
  brush.b *= factor
}
