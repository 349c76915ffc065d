// A distant wood: crowns too far off for branches, each a few lobes of leaf sprays. Light is not marched: a spray knows how
// it lies in its crown and how deep its crown stands among others, which is all that can be seen from far away.
// Laid out in metres; the number of crowns never depends on the frame size.
import { growBush } from './bush.ts'
import { addLeaf, createFoliage, type Foliage, leafStride } from './foliage.ts'
import type { FoliageLight } from './foliage-light.ts'
import { createStream, hash } from './hash.ts'
import type { Vector } from './vector.ts'

export interface FarWoodOptions {
  readonly seed: number
  /** Nearest and farthest row in m; `rows` between them in equal ratios. */
  readonly nearM: number
  readonly farM: number
  readonly rows: number
  /** Half the width seen, as a slope X ÷ Z. */
  readonly halfSlope: number
  /** Crown height in m, least and most. */
  readonly heightM: readonly [number, number]
  /** Metres between crowns in a row. */
  readonly spacingM: number
  /** Sprays per crown: 400 for crowns of a hundred pixels. */
  readonly sprays: number
  /** Share of conifers 0…1. */
  readonly conifers: number
  /** Direction to the sun; under overcast straight up. */
  readonly sun: Vector
  /** Height of the ground in m. */
  groundM(x: number, z: number): number
  /** Share of places with a crown 0…1. */
  cover(x: number, z: number): number
}

/** Kinds of leaf in a far wood. */
export const farWoodKind = { broadleaf: 0, conifer: 1, core: 2 } as const

export interface FarWood {
  readonly foliage: Foliage
  readonly lit: FoliageLight
}

/** Grows the wood with its light; hand both to `placeFoliage`. */
export function growFarWood(options: FarWoodOptions): FarWood {
  const foliage = createFoliage()
  const sun: number[] = []
  const sky: number[] = []
  for (let row = 0; row < options.rows; row++) {
    const z = options.nearM * (options.farM / options.nearM) ** (row / Math.max(1, options.rows - 1))
    const halfM = options.halfSlope * z + options.heightM[1]
    const crowns = Math.ceil((2 * halfM) / options.spacingM)
    for (let i = 0; i < crowns; i++) {
      const next = createStream(hash(options.seed, row, i))
      const x = ((i + next()) / crowns - 0.5) * 2 * halfM
      const crownZ = z * (1 + (0.5 * (next() - 0.5) * Math.log(options.farM / options.nearM)) / options.rows)
      if (next() > options.cover(x, crownZ)) continue
      const first = foliage.leafCount
      const foot = [x, options.groundM(x, crownZ), crownZ] as const
      const heightM = options.heightM[0] + (options.heightM[1] - options.heightM[0]) * next() ** 1.4
      if (next() < options.conifers) growConifer(foliage, foot, heightM * 1.1, options.sprays, next)
      else {
        const widthM = heightM * (0.6 + 0.35 * next())
        const leafM = heightM * 1.2 * options.sprays ** -0.5
        const seed = hash(options.seed, row, i, 9)
        growCore(foliage, foot, heightM, widthM, next)
        growBush(foliage, { seed, foot, heightM, widthM, clear: -0.03, leaves: options.sprays, leafM })
      }
      lightCrown(foliage, first, foot, heightM, options.sun, sun, sky)
    }
  }
  const limbs = foliage.limbCount
  return {
    foliage,
    lit: {
      leafSun: Float32Array.from(sun),
      leafSky: Float32Array.from(sky),
      limbSun: new Float32Array(limbs).fill(0.2),
      limbSky: new Float32Array(limbs).fill(0.5),
    },
  }
}

/** Dark foliage deep inside a crown: it closes the view between the sprays. */
function growCore(foliage: Foliage, foot: Vector, heightM: number, widthM: number, next: () => number): void {
  for (let i = 0; i < 14; i++) {
    const up = 0.06 + 0.6 * next()
    const m = heightM * 0.13
    const x = foot[0] + (next() - 0.5) * widthM * 0.5
    addLeaf(
      foliage,
      x,
      foot[1] + up * heightM,
      foot[2] + widthM * 0.3,
      m,
      0.3 * m,
      0,
      0,
      -0.3,
      -1,
      m * 0.5,
      -1,
      farWoodKind.core,
    )
  }
}

function growConifer(foliage: Foliage, foot: Vector, heightM: number, sprays: number, next: () => number): void {
  const half = heightM * (0.15 + 0.06 * next())
  const length = heightM * 1.9 * sprays ** -0.5
  for (let i = 0; i < sprays; i++) {
    const up = (i + next()) / sprays
    const a = next() * 6.2832
    const tier = 0.75 + 0.25 * Math.cos(up * 44)
    const r = half * (1.04 - up) * tier * (0.35 + 0.65 * Math.sqrt(next()))
    const m = length * (1.15 - 0.75 * up) * (0.7 + 0.5 * next())
    const nx = Math.cos(a)
    const nz = Math.sin(a)
    addLeaf(
      foliage,
      foot[0] + nx * r,
      foot[1] + heightM * (0.04 + 0.96 * up),
      foot[2] + nz * r,
      nx * m,
      -0.35 * m,
      nz * m,
      nx * 0.5,
      1,
      nz * 0.5,
      m * 0.2,
      2 * next() - 1,
      farWoodKind.conifer,
    )
  }
}

/** A spray near the sunward surface of its crown is lit; low ones stand in the shade of the neighbours. */
function lightCrown(
  foliage: Foliage,
  first: number,
  foot: Vector,
  heightM: number,
  sun: Vector,
  outSun: number[],
  outSky: number[],
): void {
  const d = foliage.leaves
  for (let i = first; i < foliage.leafCount; i++) {
    const o = i * leafStride
    if (d[o + 11] === farWoodKind.core) {
      outSun.push(0.02)
      outSky.push(0.2)
      continue
    }
    const x = (d[o] - foot[0]) / (0.38 * heightM)
    const y = ((d[o + 1] - foot[1]) / heightM - 0.52) / 0.48
    const z = (d[o + 2] - foot[2]) / (0.38 * heightM)
    const towards = x * sun[0] + y * sun[1] + z * sun[2]
    const shell = 0.45 + 0.75 * towards
    const open = Math.min(1, Math.max(0.06, 0.5 + 0.55 * y))
    outSun.push(Math.min(1, Math.max(0.02, shell)) * (0.25 + 0.75 * open))
    outSky.push(open * Math.min(1, 0.3 + 0.7 * Math.sqrt(x * x + y * y + z * z)))
  }
}
