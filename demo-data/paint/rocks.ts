// Sea rocks as part of a landscape: domes pressed out of round, cut into ledges and crags. Heights in metres above still water.
// One function of X and Z, so that a rock can cast shadows and stand in water like any other ground; it goes on below a rock's
// foot, so that the ground can tell how near a rock is.
import { fbm2, noise2 } from './noise.ts'

export interface Rock {
  readonly x: number
  readonly z: number
  readonly radiusM: number
  readonly heightM: number
  /** Roundness of the profile: 1 = dome, .3 = tower. */
  readonly blunt: number
  /** Height of its foot, if not still water. */
  readonly footM?: number
}

const binM = 3

/** Returns the height of the highest rock over X, Z, below the foot around it, or −99 far from all. Only rocks near a point are asked. */
export function createRocks(rocks: readonly Rock[]): (x: number, z: number, footprintM: number) => number {
  const bins = new Map<number, number[]>()
  rocks.forEach((rock, index) => {
    const reach = rock.radiusM * 1.49
    for (let i = Math.floor((rock.x - reach) / binM); i <= Math.floor((rock.x + reach) / binM); i++) {
      for (let j = Math.floor((rock.z - reach) / binM); j <= Math.floor((rock.z + reach) / binM); j++) {
        const key = i * 4096 + j
        bins.set(key, [...(bins.get(key) ?? []), index])
      }
    }
  })
  return (x, z, footprintM) => {
    const near = bins.get(Math.floor(x / binM) * 4096 + Math.floor(z / binM))
    if (!near) return -99
    let best = -99
    for (const index of near) {
      const h = oneHeight(rocks[index], index, x, z, footprintM)
      if (h > best) best = h
    }
    return best
  }
}

function oneHeight(rock: Rock, i: number, x: number, z: number, footprintM: number): number {
  const dx = (x - rock.x) / rock.radiusM
  const dz = (z - rock.z) / rock.radiusM
  const rough = dx * dx + dz * dz
  if (rough > 2.2) return -99
  const warp = 0.42 * noise2(dx * 1.4 + i * 7.1, dz * 1.4, 311) + 0.14 * noise2(dx * 4.1, dz * 4.1 + i * 3.3, 312)
  const q = rough * (1 + warp * 1.5)
  const dome = 1 - q ** (1 / rock.blunt)
  const foot = rock.footM ?? 0
  if (q >= 1) return foot + rock.heightM * dome * (0.8 - 0.5 * (dx * 0.5 + dz * 0.3))
  const cell = Math.min(3.4, rock.radiusM * 0.5)
  const lean = dx * 0.5 + dz * 0.3
  const crag = 1 - Math.abs(fbm2(x / cell + i * 5, z / cell, 6, 313 + i, footprintM / cell)) * 1.5
  const crags = Math.min(0.42 * rock.heightM, 0.5 * cell)
  const raw = rock.heightM * dome * (0.8 - 0.5 * lean) + crags * (crag - 0.6) * Math.sqrt(dome)
  const ledge = Math.max(0.28, rock.heightM * 0.13)
  const step = raw / ledge + 0.5 * lean
  const f = step - Math.floor(step)
  return foot + raw + 0.45 * ledge * (f * f * (3 - 2 * f) - f)
}
