// What covers the woodland's ground beside the ferns: small herbs and fallen leaves, each leaf with a seed of its own.
import { addLeaf, type Foliage } from '../paint/foliage.ts'
import { hashUnit } from '../paint/hash.ts'
import { noise2 } from '../paint/noise.ts'
import { leafKind, pathCentre, pathHalfWidthM } from './woodland-plan.ts'

/** Small herbs that hide the soil beside the path. */
export function addUndergrowth(foliage: Foliage, seed: number): void {
  for (let i = 0; i < 5200; i++) {
    const z = 2.5 + 16 * hashUnit(seed, 30, i, 1) ** 1.6
    const x = (hashUnit(seed, 30, i, 2) - 0.5) * z * 1.1
    if (Math.abs(x - pathCentre(z)) < pathHalfWidthM * 0.9 + 0.25 * hashUnit(seed, 30, i, 3)) continue
    if (noise2(x / 1.1, z / 1.1, seed + 5) < -0.1) continue
    const high = 0.04 + 0.12 * hashUnit(seed, 30, i, 4)
    const leaves = 3 + Math.floor(3 * hashUnit(seed, 30, i, 5))
    for (let l = 0; l < leaves; l++) {
      const a = l * 2.4 + i
      const long = 0.03 + 0.035 * hashUnit(seed, 31, i, l)
      const lift = 0.5 - 0.7 * hashUnit(seed, 32, i, l)
      const h = high * (0.5 + 0.5 * hashUnit(seed, 33, i, l))
      addLeaf(
        foliage,
        x + 0.015 * Math.sin(a),
        h,
        z + 0.015 * Math.cos(a),
        Math.sin(a) * long,
        lift * long,
        Math.cos(a) * long,
        0.4 * Math.sin(a * 3),
        1,
        0.4 * Math.cos(a * 3),
        long * 0.36,
        hashUnit(seed, 34, i, l) * 2 - 1,
        leafKind.herb,
      )
    }
  }
}

/** Fallen leaves lying on path and litter, curled a little. */
export function addLitter(foliage: Foliage, seed: number): void {
  for (let i = 0; i < 9000; i++) {
    const z = 2.5 + 11 * hashUnit(seed, 40, i, 1) ** 1.5
    const x = (hashUnit(seed, 40, i, 2) - 0.5) * z * 1.05
    const onPath = Math.abs(x - pathCentre(z)) < pathHalfWidthM * 0.7
    if (onPath && hashUnit(seed, 40, i, 3) > 0.18) continue
    const a = hashUnit(seed, 40, i, 4) * 6.283
    const long = 0.035 + 0.04 * hashUnit(seed, 40, i, 5)
    addLeaf(
      foliage,
      x + 0.003,
      0.001,
      z + 0.002,
      Math.sin(a) * long,
      0,
      Math.cos(a) * long,
      0,
      1,
      0,
      long * 0.31,
      0,
      leafKind.shadow,
    )
    addLeaf(
      foliage,
      x,
      0.003 + 0.006 * hashUnit(seed, 40, i, 6),
      z,
      Math.sin(a) * long,
      0.25 * long * hashUnit(seed, 40, i, 7),
      Math.cos(a) * long,
      0.9 * (hashUnit(seed, 40, i, 8) - 0.5),
      1,
      0.9 * (hashUnit(seed, 40, i, 9) - 0.5),
      long * 0.3,
      hashUnit(seed, 40, i, 10) * 2 - 1,
      leafKind.fallen,
    )
  }
}
