// What grows in the garden's borders: shrubs at the back, drifts of flowers before them. Petals borrow measured spectra that
// come closest: white cotton, an autumn-yellow leaf, orange lichen.
import type { Palette } from '../light/triplets.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import { growBush } from '../paint/bush.ts'
import { addLeaf, addLimb, createFoliage, type Foliage } from '../paint/foliage.ts'
import { createStream, hash, hashUnit } from '../paint/hash.ts'
import { fbm2 } from '../paint/noise.ts'
import type { Dye } from '../paint/place-foliage.ts'
import { bench, fenceZ, insideBorder, pathX } from './garden-plan.ts'

const kind = { leaf: 0, maple: 1, pine: 2, yellow: 3, white: 4, gold: 5, orange: 6, eye: 7 } as const

/** A flower head on a stem with a few leaves: petals around an eye, turned up and towards the light. */
function growFlower(
  foliage: Foliage,
  x: number,
  z: number,
  heightM: number,
  petalM: number,
  petal: number,
  seed: number,
): void {
  const next = createStream(seed)
  const tx = x + (next() - 0.5) * 0.3 * heightM
  const tz = z + (next() - 0.5) * 0.3 * heightM
  const y = heightM
  addLimb(foliage, x, 0, z, 0.0035, (x + tx) / 2, y * 0.55, (z + tz) / 2, 0.003)
  addLimb(foliage, (x + tx) / 2, y * 0.55, (z + tz) / 2, 0.003, tx, y, tz, 0.0022)
  for (let l = 0; l < 11; l++) {
    const t = 0.06 + 0.075 * l
    const a = l * 2.4 + next()
    const m = heightM * (0.23 - 0.013 * l)
    addLeaf(
      foliage,
      x + (tx - x) * t,
      y * t,
      z + (tz - z) * t,
      Math.cos(a) * m,
      m * 0.5,
      Math.sin(a) * m,
      0,
      1,
      -0.4,
      m * 0.1,
      next() - 0.5,
    )
  }
  const nx = -0.35 + 0.5 * (next() - 0.5)
  const nz = -0.75 + 0.4 * (next() - 0.5)
  const petals = 11 + Math.floor(4 * next())
  for (let p = 0; p < petals; p++) {
    const a = (p / petals) * 6.2832 + 0.2 * next()
    const ax = Math.cos(a) * petalM
    const az = Math.sin(a) * petalM
    const m = 0.85 + 0.3 * next()
    addLeaf(foliage, tx, y, tz, ax * m, -(ax * nx + az * nz) * m, az * m, nx, 1, nz, petalM * 0.15, next() - 0.5, petal)
  }
  for (let e = 0; e < 5; e++) {
    const a = e * 1.2566
    const r = petalM * 0.24
    addLeaf(
      foliage,
      tx - Math.cos(a) * r,
      y + 0.006,
      tz - 0.012,
      Math.cos(a) * r * 2,
      0.3 * r,
      Math.sin(a) * r * 0.8,
      nx,
      1,
      nz,
      r * 0.5,
      next() - 0.5,
      kind.eye,
    )
  }
}

/** A low mound of small leaves that covers the soil. */
function growCushion(foliage: Foliage, x: number, z: number, front: boolean, seed: number): void {
  const size = hashUnit(seed, 2)
  growBush(foliage, {
    seed,
    foot: [x, 0, z],
    heightM: (front ? 0.12 : 0.24) + 0.14 * size,
    widthM: 0.3 + 0.2 * size,
    clear: 0,
    leaves: 420,
    leafM: 0.026 + 0.016 * hashUnit(seed, 3),
    kind: hashUnit(seed, 4) < 0.5 ? kind.leaf : kind.maple,
  })
}

/** Grows both borders and the daisies in the lawn. Leaf kinds are those that `borderDye` colours. */
export function growBorders(seed: number): Foliage {
  const plants = createFoliage()
  for (let i = 0; i < 23; i++) {
    const next = createStream(hash(seed, 7, i))
    const back = i < 14
    const side = i % 3 === 0 ? -1 : 1
    const z = back ? fenceZ - 0.75 - 0.35 * next() : 5.6 + (i - 14) * 1.02 + 0.3 * next()
    const x = back
      ? -8.6 + 1.32 * i + 0.5 * next()
      : side > 0
        ? 4.25 + 0.17 * (z - 4) + 0.9 * next()
        : -5.6 - 0.2 * (z - 4) - 0.7 * next()
    const heightM = back ? 0.8 + 1.25 * next() : 0.7 + 0.9 * next()
    if (back && Math.abs(x - bench.x - bench.widthM / 2) < 1.7) continue
    growBush(plants, {
      seed: hash(seed, 8, i),
      foot: [x, 0, z],
      heightM,
      widthM: 1.2 + 0.8 * next(),
      clear: 0,
      leaves: 6200,
      leafM: 0.05 + 0.025 * next(),
      kind: [kind.leaf, kind.maple, kind.pine, kind.leaf, kind.maple, kind.yellow][hash(seed, 9, i) % 6],
    })
  }
  const cellM = 0.21
  for (let j = Math.round(3.6 / cellM); j * cellM < fenceZ - 0.4; j++) {
    for (let i = -45; i <= 45; i++) {
      const x = (i + hashUnit(i, j, seed, 1)) * cellM
      const z = (j + hashUnit(i, j, seed, 2)) * cellM
      const inside = insideBorder(x, z)
      if (inside < 0.12 || inside > 1.35) continue
      const own = hash(i, j, seed, 3)
      const drift = fbm2(x / 1.3, z / 1.3, 2, seed + 51)
      const bloom = fbm2(x / 1.1 + 20, z / 1.1, 2, seed + 53)
      const front = inside < 0.38
      if (hashUnit(own, 1) < (front ? 0.8 : 0.3)) growCushion(plants, x, z, front, own)
      if (bloom < -0.45) continue
      const flower = drift > 0.16 ? kind.white : drift > -0.22 ? kind.gold : kind.orange
      const heads = front ? 1 : 2
      for (let h = 0; h < heads; h++)
        growFlower(
          plants,
          x + 0.12 * h,
          z + 0.05 * h,
          (front ? 0.2 : 0.36 + 0.2 * inside) + 0.2 * hashUnit(own, h, 4),
          0.019 + 0.011 * hashUnit(own, h, 5),
          flower,
          hash(own, h),
        )
    }
  }
  for (let i = 0; i < 900; i++) {
    const z = 3.8 + 9 * hashUnit(seed, 61, i) ** 1.3
    const x = (2 * hashUnit(seed, 62, i) - 1) * 0.58 * z
    if (insideBorder(x, z) > -0.1 || Math.abs(x - pathX(z)) < 0.8 || fbm2(x / 0.9, z / 0.9, 2, seed + 63) < 0.12)
      continue
    growFlower(plants, x, z, 0.045 + 0.02 * hashUnit(seed, 64, i), 0.0085, kind.white, hash(seed, 65, i))
  }
  return plants
}

/** Colours of the borders; `sunAt` is the share of sun that passes the tree, for a point in space. */
export function borderDye(palette: Palette, sunAt: (x: number, y: number, z: number) => number): Dye {
  const leaf = palette.of('leaf')
  const yellow = palette.of('yellowLeaf')
  const bark = palette.of('bark')
  const dried = palette.of('driedLeaf')
  const green = [leaf, palette.of('mapleLeaf'), palette.of('pine'), yellow]
  const petals = [palette.of('cotton'), yellow, palette.of('lichenOrange'), dried]
  return {
    leaf(part, brush) {
      const sun = part.sun * sunAt(part.x, part.y, part.z)
      if (part.kind >= kind.white)
        light(brush, petals[part.kind - kind.white], 0.15 * sunAt(part.x, part.y, part.z) + 1.05 * sun, part.sky)
      else
        lightMix(
          brush,
          green[part.kind],
          yellow,
          part.tint > 0.7 ? 0.4 : 0,
          1.6 * sun,
          part.sky,
          0,
          0.05 + 0.36 * part.sky,
        )
      scale(brush, 1 + 0.15 * part.tint)
    },
    limb(part, brush) {
      lightMix(brush, bark, leaf, part.y < 0.5 ? 0.6 : 0.2, part.sun * sunAt(part.x, part.y, part.z), part.sky, 0, 0.1)
    },
  }
}
