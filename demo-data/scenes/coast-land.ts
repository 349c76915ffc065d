// The coast's solid ground: a beach that falls to the sea on the left, rocks along it, a stack in the sea, a headland with
// grass on top that closes the bay on the right. Heights in metres above the still water.
import { fbm2, noise2 } from '../paint/noise.ts'
import { createRockField, type Rock } from '../paint/rock-field.ts'

const boulder = (x: number, z: number, radius: number, heightM: number, seed: number, long = 1.25, turnDeg = 20): Rock => ({
  x,
  z,
  radiusX: radius * long,
  radiusZ: radius,
  heightM,
  turnDeg,
  seed,
  steep: 0,
})

const rocks: readonly Rock[] = [
  boulder(3.3, 9.6, 1.35, 1.15, 11),
  boulder(1.35, 8.1, 0.34, 0.3, 12),
  boulder(1.9, 10.4, 0.5, 0.42, 13, 1.5, -15),
  boulder(5.6, 13.2, 1.9, 1.75, 14, 1.3, 35),
  boulder(8.6, 18.5, 2.5, 2.2, 15, 1.35, 15),
  boulder(3.2, 14.6, 0.7, 0.5, 16),
  boulder(-3.4, 16.8, 1.5, 1.15, 17, 1.4, 10),
  boulder(-5.2, 18.6, 1.0, 0.8, 18),
  boulder(-8.5, 27, 2.6, 2.1, 19, 1.5, -12),
  boulder(-0.6, 31, 2.0, 1.2, 20, 1.5),
  boulder(6.2, 36, 2.6, 1.7, 21, 1.5, 8),
  boulder(15, 33, 3.0, 2.7, 22, 1.4, 25),
  boulder(24, 52, 5, 4.2, 23, 1.4, 20),
  boulder(-19, 47, 3.6, 2.6, 24, 1.7, -8),
  boulder(8, 60, 3.2, 1.5, 25, 1.8),
  boulder(42, 84, 8, 7, 26, 1.3, 30),
  boulder(-4, 116, 8, 7, 27, 1.5, 10),
  { x: -25, z: 122, radiusX: 12, radiusZ: 10, heightM: 36, turnDeg: 25, seed: 31, steep: 0.8 },
  { x: -13, z: 126, radiusX: 7, radiusZ: 7, heightM: 15, turnDeg: -10, seed: 32, steep: 0.55 },
]
const field = createRockField(rocks)

/** Metres offshore of the mean waterline; negative on the beach. Curved as the beach curves. */
export function offshoreM(x: number, z: number): number {
  const line = -4.2 + 0.37 * z + 1.1 * Math.sin(z / 8 + 0.8) + 3.5 * Math.sin(z / 41)
  return (line - x) * 0.9 + 0.22 * noise2(x / 3.1, z / 3.1, 401)
}

/** The beach and the sea bed, without rocks. */
export function beachHeight(x: number, z: number): number {
  const s = offshoreM(x, z)
  const slope = s > 0 ? -0.05 * s : -0.042 * s - (s < -14 ? 0.12 * (s + 14) : 0)
  return Math.max(-2.5, slope)
}

/** Metres behind the edge of the cliff. */
function behindCliff(x: number, z: number): number {
  const gullies = 16 * fbm2(z / 70, x / 300, 4, 411) + 5 * noise2(z / 11, x / 40, 415)
  return (x - 92) * 0.984 + (z - 70) * 0.178 - 1.1 * Math.max(0, z - 380) + gullies
}

function headland(x: number, z: number, footprintM: number): number {
  if (z < 60 || z > 900 || x < -20) return -Infinity
  const e = behindCliff(x, z)
  if (e < -24) return -Infinity
  const foot = Math.max(0, e + 24) * 0.16
  const cliff = 24 * Math.min(1, Math.max(0, e / 9)) ** 0.6
  const top = e > 6 ? 34 * (1 - Math.exp(-(e - 6) / 70)) : 0
  const rough = e > 0 ? fbm2(x / 16, z / 16, 6, 417, footprintM / 16) : 0
  const hummocks = e > 6 ? 1.6 * fbm2(x / 34, z / 34, 4, 418, footprintM / 34) : 0
  return foot + cliff * (1 + 0.16 * rough) + top + hummocks
}

export type CoastGround = 'beach' | 'rock' | 'headland'

export interface CoastLand {
  /** Height of the ground; `kind` then says what was met. */
  height(x: number, z: number, footprintM: number): number
  kind: CoastGround
}

export function createCoastLand(): CoastLand {
  const land: CoastLand = {
    kind: 'beach',
    height(x, z, footprintM) {
      const beach = beachHeight(x, z)
      const rock = field.height(x, z, footprintM)
      const cliff = headland(x, z, footprintM)
      land.kind = 'beach'
      let h = beach
      if (rock > h) {
        h = rock
        land.kind = 'rock'
      }
      if (cliff > h) {
        h = cliff
        land.kind = 'headland'
      }
      return h
    },
  }
  return land
}

/** Nothing stands higher than this. */
export function coastCeiling(x: number, z: number): number {
  if (z < 12) return 1.6
  if (z < 30) return 3.2
  if (z < 70) return x > 60 ? 20 : 6
  return 75
}
