// What closes the meadow: a hedge of bushes along an old boundary, a few grown into small trees, and a wood behind it.
import type { Palette } from '../light/triplets.ts'
import { type Air, throughAir } from '../paint/air.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import { growBush } from '../paint/bush.ts'
import type { Camera } from '../paint/camera.ts'
import { farWoodKind, growFarWood } from '../paint/far-wood.ts'
import { createFoliage } from '../paint/foliage.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { createStream, hash } from '../paint/hash.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import type { Strokes } from '../paint/strokes.ts'
import type { Vector } from '../paint/vector.ts'
import type { MeadowGround } from './meadow-ground.ts'

const nearM = 122
const halfWidthM = 92

export function growHedge(
  strokes: Strokes,
  camera: Camera,
  palette: Palette,
  seed: number,
  sun: Vector,
  ground: MeadowGround,
  air: Air,
): void {
  const hedge = createFoliage()
  for (let i = 0, x = -halfWidthM; x < halfWidthM; i++) {
    const next = createStream(hash(seed, 71, i))
    x += 0.6 + 1.2 * next()
    if (next() > ground.hedgeCover(x, nearM)) continue
    const grown = next() ** 5
    const heightM = 1.5 + 1.3 * next() + 6.5 * grown
    const widthM = 2 + 1.2 * next() + 4.5 * grown
    const z = nearM + 0.06 * x + 3.5 * next()
    const leaves = Math.round(900 * widthM * (0.7 + 0.16 * heightM))
    growBush(hedge, {
      seed: hash(seed, 73, i),
      foot: [x, 0, z],
      heightM,
      widthM,
      clear: -0.06 + 0.16 * grown,
      leaves,
      leafM: 0.13,
      kind: i % 5 === 0 ? 1 : 0,
    })
  }
  const leaf = palette.of('mapleLeaf')
  const other = palette.of('leaf')
  const bark = palette.of('bark')
  placeFoliage(strokes, hedge, lightFoliage(hedge, { sun, cellM: 0.55, extinction: 0.8 }), camera, sun, {
    leaf(part, brush) {
      light(brush, part.kind ? other : leaf, 1.2 * part.sun, part.sky, 0, 0.05 + 0.45 * part.sky)
      scale(brush, 1 + 0.14 * part.tint)
      throughAir(brush, air, part.z)
    },
    limb(part, brush) {
      lightMix(brush, bark, leaf, 0.2, part.sun, part.sky, 0, 0.1)
      throughAir(brush, air, part.z)
    },
  })
}

/** The wood on the far side, 400 m off and deep. */
export function placeMeadowWood(
  strokes: Strokes,
  camera: Camera,
  palette: Palette,
  seed: number,
  sun: Vector,
  ground: MeadowGround,
  air: Air,
): void {
  const wood = growFarWood({
    seed,
    nearM: 390,
    farM: 820,
    rows: 5,
    halfSlope: camera.centreX / camera.focalPx,
    heightM: [8, 19],
    spacingM: 8.5,
    sprays: 440,
    conifers: 0.14,
    sun,
    groundM: (_x, z) => (z - 390) * 0.022,
    cover: ground.woodCover,
  })
  const leaf = palette.of('leaf')
  const conifer = palette.of('pine')
  const bark = palette.of('bark')
  placeFoliage(strokes, wood.foliage, wood.lit, camera, sun, {
    leaf(part, brush) {
      const material = part.kind === farWoodKind.conifer ? conifer : leaf
      light(brush, material, 1.25 * part.sun, 0.8 * part.sky, 0, 0.04 + 0.34 * part.sky)
      scale(brush, 1 + 0.1 * part.tint)
      throughAir(brush, air, part.z)
    },
    limb(part, brush) {
      light(brush, bark, part.sun, part.sky)
      throughAir(brush, air, part.z)
    },
  })
}
