// Stones that lie about the coast's rocks and along the line of the last tide: small rocks of their own, each from a hash, bedded
// in the sand. Metres.
import { hashUnit } from '../paint/hash.ts'
import type { Rock } from '../paint/rocks.ts'

const perRock = 34
const strewn = 170

/** Stones about those of `rocks` that stand on the beach, and strewn along it; `groundM` is the sand's height. */
export function strewStones(
  rocks: readonly Rock[],
  groundM: (x: number, z: number) => number,
  landwardM: (x: number, z: number) => number,
  fromLandwardM: (landwardM: number, z: number) => number,
): Rock[] {
  const stones: Rock[] = []
  const add = (x: number, z: number, radiusM: number, flat: number) => {
    if (landwardM(x, z) < 0.3) return
    const heightM = radiusM * flat
    stones.push({ x, z, radiusM, heightM, blunt: 0.9, footM: groundM(x, z) - 0.22 * heightM })
  }
  rocks.forEach((rock, r) => {
    for (let i = 0; i < perRock; i++) {
      const chance = (k: number) => hashUnit(r, i, k, 391)
      const angle = 6.283 * chance(0)
      const away = rock.radiusM * (0.78 + 0.62 * chance(1) ** 2)
      const radiusM = 0.06 + 0.46 * chance(2) ** 3
      add(rock.x + away * Math.cos(angle), rock.z + away * Math.sin(angle), radiusM, 0.95 + 0.6 * chance(3))
    }
  })
  for (let i = 0; i < strewn; i++) {
    const chance = (k: number) => hashUnit(i, k, 392)
    const z = 4 + 46 * chance(0) ** 1.4
    const inland = 1 + 11 * chance(1) ** 1.6
    add(fromLandwardM(inland, z), z, 0.03 + 0.13 * chance(2) ** 3, 0.85 + 0.6 * chance(3))
  }
  return stones
}
