// Where things stand in the woodland: the path, trunks placed by eye near the camera and by chance farther away, their
// branches and ferns. Metres; every object has its own seed.
import type { Palette } from '../light/triplets.ts'
import { birchSkin, furrowedBark, smoothBark } from '../paint/bark.ts'
import type { Fern } from '../paint/ferns.ts'
import type { Foliage } from '../paint/foliage.ts'
import { hash, hashUnit } from '../paint/hash.ts'
import { noise2 } from '../paint/noise.ts'
import { addBough, addSpray } from '../paint/sprays.ts'
import type { Trunk } from '../paint/trunks.ts'

export const pathHalfWidthM = 0.55

/** Leaf kinds that the scene colours differently; 0 = leaves on trees. */
export const leafKind = { fallen: 1, herb: 2, shadow: 3 } as const

/** X of the middle of the path at distance z. */
export function pathCentre(z: number): number {
  return 0.35 - 1.15 * Math.sin((z - 2) / 5.2) * Math.min(1, z / 9) + 0.012 * (z - 14)
}

/** Holes in the canopy, given by where their light falls. */
export const openings = [
  { x: 1.35, z: 4.7, radiusM: 1.25 },
  { x: -0.75, z: 3.6, radiusM: 0.7 },
  { x: -1.7, z: 7.6, radiusM: 1 },
  { x: 0.5, z: 17, radiusM: 2.4 },
  { x: -2.2, z: 24, radiusM: 3 },
]

const placed: readonly (readonly [
  x: number,
  z: number,
  radius: number,
  lean: number,
  kind: 'oak' | 'beech' | 'birch',
])[] = [
  [-1.75, 5.1, 0.3, -0.008, 'oak'],
  [2.15, 7.2, 0.2, 0.012, 'beech'],
  [1.15, 12.5, 0.1, 0.03, 'birch'],
  [1.5, 13.1, 0.085, -0.02, 'birch'],
  [-3.3, 9.4, 0.17, 0.01, 'beech'],
  [-1.9, 14.5, 0.16, -0.01, 'beech'],
  [3.9, 11.5, 0.24, 0.004, 'oak'],
  [-0.6, 21, 0.2, 0.006, 'beech'],
]

export function plantTrunks(palette: Palette, seed: number): Trunk[] {
  const barks = {
    oak: { bark: furrowedBark, skin: palette.of('bark'), second: palette.of('lichen') },
    beech: { bark: smoothBark, skin: palette.of('rock'), second: palette.of('lichen') },
    birch: { bark: birchSkin, skin: palette.of('birchBark'), second: palette.of('asphalt') },
  }
  const trunks: Trunk[] = placed.map(([x, z, radiusM, lean, kind], i) => ({
    x,
    z,
    radiusM,
    lean,
    topM: 40,
    ...barks[kind],
    seed: hash(seed, 1, i) % 1000,
  }))
  for (let i = 0; i < 420; i++) {
    const z = 10 + 48 * Math.sqrt(hashUnit(seed, 2, i, 1))
    const x = (hashUnit(seed, 2, i, 2) - 0.5) * z * 1.25
    const clear = Math.abs(x - pathCentre(z)) < 1.3 + 0.02 * z
    if (clear || trunks.some((t) => Math.hypot(t.x - x, (t.z - z) * 0.8) < 1.7)) continue
    const pick = hashUnit(seed, 2, i, 3)
    const kind = pick < 0.2 ? 'birch' : pick < 0.72 ? 'beech' : 'oak'
    const girth = hashUnit(seed, 2, i, 4)
    trunks.push({
      x,
      z,
      radiusM: kind === 'birch' ? 0.06 + 0.06 * girth : 0.05 + 0.2 * girth * girth,
      lean: (hashUnit(seed, 2, i, 5) - 0.5) * 0.05,
      topM: 40,
      ...barks[kind],
      seed: hash(seed, 3, i) % 1000,
    })
  }
  return trunks
}

/** Boughs of every trunk: few below head height of the crowns, many above; and young trees between them. */
export function addWoodBranches(foliage: Foliage, trunks: readonly Trunk[], seed: number): void {
  trunks.forEach((t, i) => {
    const seen = 0.9 * t.z + 2
    const lowest = t.z < 7 ? 3.2 : 2.6
    const coarse = 1 + Math.max(0, t.z - 9) / 28
    const count = Math.round(Math.min(seen - lowest, 16) * (t.z < 12 ? 2.2 : t.z < 34 ? 2 : 1.6))
    for (let b = 0; b < count; b++) {
      const y = lowest + (seen - lowest) * ((b + hashUnit(seed, 10, i, b * 4 + 1)) / count) ** 0.8
      const turn = hashUnit(seed, 10, i, b * 4 + 3)
      const heading = t.z < 9 ? (turn - 0.5) * 3.6 : turn * 6.283
      addBough(foliage, {
        x: t.x + t.lean * y + 0.8 * t.radiusM * Math.sin(heading),
        y,
        z: t.z + 0.8 * t.radiusM * Math.cos(heading),
        heading,
        lengthM: 1.4 + 2.3 * hashUnit(seed, 10, i, b * 4 + 2),
        rise: 0.6 - 0.4 * hashUnit(seed, 10, i, b * 4 + 4),
        leafM: 0.08 * coarse,
        spacingM: 0.1 * coarse,
        seed: hash(seed, 11, i, b),
        bare: t.z > 17,
      })
    }
  })
  for (let i = 0; i < 46; i++) {
    const z = 6.5 + 26 * hashUnit(seed, 12, i, 1)
    const x = (hashUnit(seed, 12, i, 2) - 0.5) * z * 1.15
    if (Math.abs(x - pathCentre(z)) < 1.2) continue
    const tall = 1.2 + 2.6 * hashUnit(seed, 12, i, 3)
    const far = z > 16 ? 1.5 : 1
    for (let b = 0; b < 9; b++) {
      addSpray(foliage, {
        x: x + 0.1 * (hashUnit(seed, 13, i, b) - 0.5),
        y: tall * (0.25 + (0.75 * b) / 9),
        z,
        heading: b * 2.4 + i,
        lengthM: tall * 0.42 * (1.15 - b / 10),
        rise: 0.5,
        leafM: 0.07 * far,
        spacingM: 0.13 * far,
        seed: hash(seed, 14, i, b),
        kind: leafKind.herb,
      })
    }
  }
}

export function plantFerns(trunks: readonly Trunk[], seed: number): Fern[] {
  const ferns: Fern[] = []
  for (let i = 0; i < 1500; i++) {
    const z = 2.6 + 30 * hashUnit(seed, 20, i, 1) ** 1.5
    const x = (hashUnit(seed, 20, i, 2) - 0.5) * z * 1.15
    const sizeM = 0.42 + 0.42 * hashUnit(seed, 20, i, 3)
    const off = Math.abs(x - pathCentre(z))
    if (off < pathHalfWidthM + sizeM * 0.45) continue
    if (noise2(x / 2.6, z / 2.6, seed) < -0.2) continue
    if (ferns.some((f) => Math.hypot(f.x - x, f.z - z) < 0.42 * (f.sizeM + sizeM))) continue
    if (trunks.some((t) => Math.hypot(t.x - x, t.z - z) < t.radiusM * 1.5)) continue
    ferns.push({ x, z, sizeM, seed: hash(seed, 21, i) % 100000 })
  }
  return ferns
}
