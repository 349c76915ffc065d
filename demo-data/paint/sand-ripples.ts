// Wind ripples on sand as a slope, not as a height: they are a few millimetres tall, so only their shading shows.
// Three wave trains of slightly different length and direction fade in and out; where one takes over from another, crests end
// or fork as they do on real sand. A pixel that spans most of a wave sees less of it.
import { noise2 } from './noise.ts'

interface Train {
  /** Wave numbers in radians per metre. */
  readonly kx: number
  readonly kz: number
}

/** Wave length in metres, and turn against the wind in degrees. Lengths of 8–15 cm are common (textbook, from memory). */
const trains: readonly Train[] = [
  [0.106, -3],
  [0.119, 1],
  [0.098, 3],
].map(([length, turnDeg]) => {
  const a = ((turnDeg + 14) * Math.PI) / 180
  return { kx: ((2 * Math.PI) / length) * Math.cos(a), kz: ((2 * Math.PI) / length) * Math.sin(a) }
})
const patchM = 1.7
/** Steepest slope of an average ripple: height a fifteenth of the length (textbook, from memory). */
const steepness = 0.24

/**
 * Slope along the wind (positive = rising downwind) at X, Z metres, about −.5 … .25. `acrossM` and `alongM` are the ground
 * widths of a pixel in X and in Z.
 */
export function rippleSlope(x: number, z: number, acrossM: number, alongM: number): number {
  const bendX = 0.03 * noise2(x / 0.7, z / 0.9, 41) + 0.11 * noise2(x / 2.3, z / 2.9, 42)
  const bendZ = 0.12 * noise2(x / 1.4, z / 1.1, 43)
  let c = 0
  let s = 0
  for (let i = 0; i < trains.length; i++) {
    const { kx, kz } = trains[i]
    const turn = Math.abs(kx) * acrossM + Math.abs(kz) * alongM
    if (turn > 1.9) continue
    const fade = turn < 0.5 ? 1 : (1.9 - turn) / 1.4
    const share = Math.max(0, 0.4 + 0.55 * noise2(x / patchM, z / patchM, 44 + i)) * fade
    const phase = kx * (x + bendX) + kz * (z + bendZ)
    c += share * Math.cos(phase)
    s += share * Math.sin(phase)
  }
  const size = Math.sqrt(c * c + s * s)
  if (size < 0.01) return 0
  const phase = Math.atan2(s, c)
  const height = Math.min(1, size * 1.6)
  const lee = Math.cos(phase)
  return steepness * height * (lee > 0 ? lee * 0.8 : lee * (1.1 + 0.5 * lee * lee)) + 0.02
}
