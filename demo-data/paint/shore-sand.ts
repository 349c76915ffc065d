// The surface of a sandy shore: faint tide ripples in patches, unevenness, grains. Slopes and tones only: everything here is
// smaller than the shape of the beach.
import { fbm2, noise2 } from './noise.ts'

export interface ShoreSand {
  slopeX: number
  slopeZ: number
  /** Brightness, about 1. */
  tone: number
}

function smooth(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

/** Sand at X, Z, `inlandM` behind the water's edge; `acrossM`, `alongM` = ground widths of a pixel. */
export function shoreSandAt(
  x: number,
  z: number,
  inlandM: number,
  acrossM: number,
  alongM: number,
  out: ShoreSand,
): void {
  const grainM = Math.sqrt(acrossM * alongM)
  const tide = inlandM / 0.13 + 2.2 * noise2(x / 1.3, z / 1.6, 381) + 0.5 * noise2(x / 0.35, z / 0.5, 380)
  const rippled = smooth(0.1, 0.6, noise2(x / 3.7, z / 4.6, 382) + 0.2) * smooth(0.09, 0.02, acrossM)
  out.slopeX = 0.06 * rippled * Math.cos(tide * 6.283) + 0.04 * fbm2(x / 0.5, z / 0.6, 4, 383, alongM / 0.6)
  out.slopeZ = 0.03 * rippled * Math.sin(tide * 6.283) + 0.04 * fbm2(x / 0.5 + 9, z / 0.6, 4, 384, alongM / 0.6)
  out.tone = 1 + 0.06 * fbm2(x / 1.7, z / 2.3, 4, 385, grainM / 1.7)
  if (acrossM < 0.006)
    out.tone +=
      0.09 * (1 - acrossM / 0.006) * noise2(x / 0.0028, z / 0.006, 386) + 0.05 * noise2(x / 0.011, z / 0.025, 387)
}
