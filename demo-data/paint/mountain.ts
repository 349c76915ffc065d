// A mountain range as height over ground points: ridges folded out of noise, sharper the higher they stand, with gullies
// between. Heights in metres; octaves finer than a pixel are left out.
import { noise2 } from './noise.ts'

export interface MountainShape {
  readonly seed: number
  /** Where the main summit stands, and how far its flanks reach to the side and in depth. */
  readonly x: number
  readonly z: number
  readonly halfWidthM: number
  readonly halfDepthM: number
  readonly heightM: number
}

const coarsestM = 3100

/** Height in metres above the plain, 0 outside. Ridged noise (after Musgrave 1994, from memory). */
export function mountainHeight(shape: MountainShape, x: number, z: number, footprintM: number): number {
  const dx = (x - shape.x) / shape.halfWidthM
  const dz = (z - shape.z) / shape.halfDepthM
  const q = dx * dx + dz * dz
  if (q >= 1) return 0
  const mass = (1 - q) * (1 - q)
  let px = x / coarsestM + 0.12 * noise2(x / 900, z / 900, shape.seed + 20)
  let pz = z / coarsestM + 0.12 * noise2(x / 900 + 5, z / 900, shape.seed + 21)
  let footprint = footprintM / coarsestM
  let amplitude = 1
  let weight = 1
  let sum = 0
  for (let octave = 0; octave < 9 && footprint < 0.7; octave++) {
    const n = noise2(px, pz, shape.seed + octave)
    const ridge = 1 - Math.sqrt(n * n + 0.0012 * (1 + octave))
    const sharp = ridge * ridge * weight
    sum += sharp * amplitude * (footprint > 0.35 ? (0.7 - footprint) / 0.35 : 1)
    weight = Math.min(1, Math.max(0.2, 1.6 * sharp))
    const turned = (px * 0.7986 - pz * 0.6018) * 2.07
    pz = (px * 0.6018 + pz * 0.7986) * 2.07
    px = turned
    amplitude *= 0.5
    footprint *= 2.07
  }
  return shape.heightM * mass * (0.12 + 0.6 * sum)
}
