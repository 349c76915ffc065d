// The garden's trees: a fruit tree on the lawn, neighbours' trees over the fence, a wood far behind.
import type { Palette } from '../light/triplets.ts'
import { type Air, throughAir } from '../paint/air.ts'
import { furrowedBark } from '../paint/bark.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import { growBush } from '../paint/bush.ts'
import type { Camera } from '../paint/camera.ts'
import { createFoliage, type Foliage } from '../paint/foliage.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { createStream, hash } from '../paint/hash.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import type { Solid, Strokes } from '../paint/strokes.ts'
import { growTree } from '../paint/tree.ts'
import { createTrunk } from '../paint/trunks.ts'
import type { Vector } from '../paint/vector.ts'

const foot = [-3.3, 0, 9.9] as const
const lean = 0.05
const clearM = 1.25

/** The fruit tree in space, and the radius of its trunk. */
export function growFruitTree(seed: number): { tree: Foliage; trunkM: number } {
  const tree = createFoliage()
  const trunkM = growTree(tree, {
    seed,
    foot,
    lean,
    bareTrunk: true,
    heightM: 4.7,
    radiusM: 2.25,
    clearM,
    lobes: 28,
    points: 3600,
    leafM: 0.062,
    leavesPerTwig: 9,
    twigs: 4,
  })
  return { tree, trunkM }
}

/** A tree outside the picture, to the left of the camera, that throws its shade across the near lawn. */
export function growShadeTree(seed: number): Foliage {
  const tree = createFoliage()
  growTree(tree, {
    seed: seed + 40,
    foot: [-7.1, 0, 3.1],
    lean: 0.02,
    heightM: 5.2,
    radiusM: 2.5,
    clearM: 1.6,
    lobes: 24,
    points: 2200,
    leafM: 0.08,
    leavesPerTwig: 7,
    twigs: 3,
    leafiness: 0.5,
  })
  return tree
}

/** Adds the fruit tree's crown to `strokes` and returns its trunk. */
export function placeFruitTree(
  strokes: Strokes,
  camera: Camera,
  palette: Palette,
  seed: number,
  sun: Vector,
  { tree, trunkM }: { tree: Foliage; trunkM: number },
  crownAt: (x: number, y: number, z: number) => number,
): Solid {
  const leaf = palette.of('mapleLeaf')
  const yellow = palette.of('yellowLeaf')
  const bark = palette.of('bark')
  placeFoliage(strokes, tree, lightFoliage(tree, { sun, cellM: 0.22, extinction: 0.72 }), camera, sun, {
    leaf(part, brush) {
      const turned = part.tint > 0.75 ? 0.3 : 0
      lightMix(brush, leaf, yellow, turned, 1.65 * part.sun, part.sky, 0, 0.15 + 0.45 * part.sky)
      scale(brush, 1 + 0.14 * part.tint)
    },
    limb(part, brush) {
      light(brush, bark, 1.3 * part.sun, 0.12 + part.sky, 0, 0.24)
    },
  })
  const [x, , z] = foot
  const trunk = {
    x,
    z,
    radiusM: trunkM,
    lean,
    topM: clearM + 0.35,
    bark: furrowedBark,
    skin: bark,
    second: palette.of('lichen'),
    seed,
  }
  return createTrunk(camera, trunk, palette.of('grass'), (brush, first, second, share, px, y, pz, facing) => {
    const direct = Math.max(0, facing[0] * sun[0] + facing[1] * sun[1] + facing[2] * sun[2])
    const open = 1 - 0.85 * Math.min(1, Math.max(0, (y - 0.4) / 1.1))
    lightMix(
      brush,
      first,
      second,
      share,
      1.1 * direct * open ** 2 * (0.1 + 0.9 * crownAt(px, y, pz)),
      0.25 + 0.4 * open,
      0,
      0.22,
    )
  })
}

/** Adds the trees beyond the fence. */
export function placeNeighbours(
  strokes: Strokes,
  camera: Camera,
  palette: Palette,
  seed: number,
  sun: Vector,
  air: Air,
): void {
  const trees = createFoliage()
  for (let i = 0; i < 46; i++) {
    const next = createStream(hash(seed, 31, i))
    const near = i < 12
    const z = near ? 27 + 16 * next() : 62 + 50 * next()
    const x = near ? (i - 5.5) * 4.2 + 2 * next() : (i - 28.5) * 4.1 + 3 * next()
    const gap = near && Math.abs(x - 3.5) < 4.5
    growBush(trees, {
      seed: hash(seed, 32, i),
      foot: [x, 0, z],
      heightM: gap ? 2.6 + 1.2 * next() : near ? 3.6 + 3 * next() ** 2 : 6 + 4 * next(),
      widthM: near ? 3.4 + 2 * next() : 6 + 3 * next(),
      clear: 0.1,
      leaves: near ? 6500 : 4200,
      leafM: near ? 0.11 : 0.22,
      kind: hash(seed, 33, i) % 3,
    })
  }
  const leaves = [palette.of('leaf'), palette.of('mapleLeaf'), palette.of('pine')]
  const bark = palette.of('bark')
  placeFoliage(strokes, trees, lightFoliage(trees, { sun, cellM: 0.5, extinction: 0.85 }), camera, sun, {
    leaf(part, brush) {
      light(brush, leaves[part.kind], 1.4 * part.sun, part.sky, 0, 0.06 + 0.4 * part.sky)
      scale(brush, 1 + 0.14 * part.tint)
      throughAir(brush, air, part.z)
    },
    limb(part, brush) {
      light(brush, bark, 0.6 * part.sun, 0.7 * part.sky)
      throughAir(brush, air, part.z)
    },
  })
}
