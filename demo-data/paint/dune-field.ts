// The shape of sand dunes: one placed ridge whose crest winds away from the camera, and trains of transverse dunes around it.
// Wind blows from the left: slopes are gentle on the left, at the angle of repose on the right, with sharp crests between.
// Heights in metres; ripples are too small for the shape and belong to the sand's surface. Sizes are tuned by eye.
import { noise2 } from './noise.ts'

/** Tangent of the angle of repose of dry sand: 32° (textbook value, from memory). */
const repose = Math.tan((32 * Math.PI) / 180)

interface Knot {
  readonly z: number
  readonly x: number
  readonly y: number
}

/** The placed crest: where it runs and how high. */
const crest: readonly Knot[] = [
  { z: -30, x: -4, y: 0.6 },
  { z: 0, x: -0.6, y: 0.1 },
  { z: 6, x: 1.5, y: -0.35 },
  { z: 14, x: 4.4, y: -0.6 },
  { z: 26, x: 4.6, y: 0.2 },
  { z: 42, x: -3.5, y: 2.6 },
  { z: 62, x: -13, y: 5.2 },
  { z: 86, x: -8, y: 6.4 },
  { z: 125, x: 12, y: 3.6 },
  { z: 180, x: 20, y: 0 },
  { z: 260, x: 64, y: -4 },
]
const valleyM = -3.4

/** Cubic through the knots, slope by finite differences; constant beyond the ends. */
function along(z: number, of: 'x' | 'y'): number {
  const n = crest.length
  if (z <= crest[0].z) return crest[0][of]
  if (z >= crest[n - 1].z) return crest[n - 1][of]
  let i = 0
  while (crest[i + 1].z < z) i++
  const a = crest[i]
  const b = crest[i + 1]
  const before = crest[i > 0 ? i - 1 : 0]
  const after = crest[i + 2 < n ? i + 2 : n - 1]
  const h = b.z - a.z
  const t = (z - a.z) / h
  const slopeA = ((b[of] - before[of]) / (b.z - before.z)) * h
  const slopeB = ((after[of] - a[of]) / (after.z - a.z)) * h
  const t2 = t * t
  const t3 = t2 * t
  return a[of] * (2 * t3 - 3 * t2 + 1) + slopeA * (t3 - 2 * t2 + t) + b[of] * (3 * t2 - 2 * t3) + slopeB * (t3 - t2)
}

const tableStep = 0.5
const tableFrom = -30
const tableSize = 600
const crestX = new Float64Array(tableSize)
const crestY = new Float64Array(tableSize)
const crestLean = new Float64Array(tableSize)
for (let i = 0; i < tableSize; i++) {
  const z = tableFrom + i * tableStep
  crestX[i] = along(z, 'x')
  crestY[i] = along(z, 'y')
  const lean = (along(z + 0.5, 'x') - along(z - 0.5, 'x')) / 1
  crestLean[i] = 1 / Math.sqrt(1 + lean * lean)
}

/** Height of the placed ridge. */
function ridge(x: number, z: number): number {
  const g = Math.min(tableSize - 1.001, Math.max(0, (z - tableFrom) / tableStep))
  const i = Math.floor(g)
  const u = g - i
  const wobble = z > 4 ? 0.35 * noise2(z / 7, 3.3, 61) * Math.min(1, (z - 4) / 12) : 0
  const top = crestY[i] + (crestY[i + 1] - crestY[i]) * u
  const d =
    (x - wobble - crestX[i] - (crestX[i + 1] - crestX[i]) * u) * (crestLean[i] + (crestLean[i + 1] - crestLean[i]) * u)
  if (d > 0) return top - repose * d
  const drop = top - valleyM
  const q = -d / (14 + 2.6 * drop)
  return valleyM + drop * Math.exp(-0.55 * q - 1.5 * q * q)
}

/** One dune across the wind: 0 at the trough, 1 at the crest; `windward` = share of the wavelength that rises. */
function profile(phase: number, windward: number): number {
  const p = phase - Math.floor(phase)
  if (p < windward) {
    const q = p / windward
    return q * q * (2.1 - 1.225 * q)
  }
  const q = (p - windward) / (1 - windward)
  const left = 1 - q
  return left < 0.25 ? 2 * left * left : left - 0.125
}

/** Dunes all over: a train 62 m long, and from 250 m on a larger one that makes the skyline. */
function trains(x: number, z: number, footprintM: number): number {
  const wx = 17 * noise2(x / 74, z / 60, 5) + 6 * noise2(x / 27, z / 24, 6)
  const size = noise2(x / 95 + 7, z / 130, 7)
  const u = (x * 0.8 - z * 0.6 + wx) / 62
  let h = (8.5 + 2.5 * Math.min(1, z / 250)) * (0.55 + 0.6 * size) * profile(u, 0.72)
  if (footprintM < 2)
    h += 1.3 * (0.5 + 0.5 * noise2(x / 33, z / 41, 9)) * profile((x * 0.88 - z * 0.48 + wx * 0.6) / 19, 0.72)
  if (z > 150) {
    const far = Math.min(1, (z - 150) / 900)
    const wide = 90 * noise2(x / 420, z / 380, 11)
    const heap = 0.5 + 0.5 * noise2(x / 700 + 3, z / 600, 12)
    h += 80 * far * heap * heap * profile((x * 0.72 - z * 0.69 + wide) / 330, 0.72)
  }
  return valleyM - 0.8 + h
}

/** Height at X, Z; details smaller than `footprintM` are left out. */
export function duneHeight(x: number, z: number, footprintM: number): number {
  const field = trains(x, z, footprintM)
  if (z > 265) return field
  const hero = ridge(x, z) - Math.max(0, z - 200) * 0.2
  const k = 1.2
  const d = hero - field
  if (d > k) return hero
  if (d < -k) return field
  const s = (d + k) / (2 * k)
  return field + d * s + k * s * (1 - s)
}

/** A surface above every dune: the dunes as they are, and a margin for what lies between two looks. */
export function duneCeiling(x: number, z: number): number {
  return duneHeight(x, z, 1.5) + 0.7 + 0.012 * z
}
