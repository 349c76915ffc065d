// Frame 3: a farm track after rain leads to an old barn under a closed sky, infrared from 665 nm. No sun anywhere: form comes
// from the sky's own gradient, from what stands in its own shade, and from the water in the ruts.
import type { Palette } from '../light/triplets.ts'
import { type Air, createAir, throughAir } from '../paint/air.ts'
import { light, lightMix, scale } from '../paint/brush.ts'
import { type Camera, createCamera } from '../paint/camera.ts'
import { createBand } from '../paint/canvas.ts'
import { farWoodKind, growFarWood } from '../paint/far-wood.ts'
import { addFence } from '../paint/fence.ts'
import { createFoliage } from '../paint/foliage.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { type GrassOptions, sowGrass } from '../paint/grass.ts'
import { paintGround } from '../paint/ground.ts'
import { createOvercast, paintOvercast } from '../paint/overcast.ts'
import { placeFoliage } from '../paint/place-foliage.ts'
import type { Scene } from '../paint/scene.ts'
import { createStrokes, paintStrokes, sortStrokes, type Strokes } from '../paint/strokes.ts'
import { growTree } from '../paint/tree.ts'
import type { Vector } from '../paint/vector.ts'
import { createBarn } from './barn-building.ts'
import { type BarnGround, createBarnGround, trackX } from './barn-ground.ts'
import { scatterLitter } from './barn-litter.ts'

const zenith: Vector = [0, 1, 0]
/** Width of the picture that the puddles mirror. */
const mirrorWidth = 1100

const postsAt = [2.7, 4.9, 7.2, 9.6, 12.1, 14.6, 17.2, 20, 23]
const fence = (z: number) => [trackX(z) - 3.15 - 0.05 * z, z] as const

function growTrees(seed: number) {
  const trees = createFoliage()
  const common = { lean: -0.02, lobes: 30, leafM: 0.13, leavesPerTwig: 8, twigs: 4 }
  growTree(trees, {
    ...common,
    seed,
    foot: [12.5, 0, 42],
    heightM: 14,
    radiusM: 6.2,
    clearM: 2.8,
    points: 4200,
    leafiness: 0.92,
  })
  growTree(trees, {
    ...common,
    seed: seed + 1,
    foot: [-14.5, 0, 46],
    heightM: 11.5,
    radiusM: 5,
    clearM: 2.3,
    points: 3200,
    leafiness: 0.7,
  })
  growTree(trees, {
    ...common,
    seed: seed + 2,
    foot: [3, 0, 50],
    heightM: 14.5,
    radiusM: 6,
    clearM: 3,
    points: 3600,
    leafiness: 0.85,
  })
  return { trees, lit: lightFoliage(trees, { sun: zenith, cellM: 0.45, extinction: 0.85 }) }
}

type Trees = ReturnType<typeof growTrees>

function placeTrees(strokes: Strokes, camera: Camera, palette: Palette, air: Air, { trees, lit }: Trees): void {
  const leaf = palette.of('leaf')
  const yellow = palette.of('yellowLeaf')
  const bark = palette.of('bark')
  placeFoliage(strokes, trees, lit, camera, zenith, {
    leaf(part, brush) {
      lightMix(
        brush,
        leaf,
        yellow,
        part.tint > 0.35 ? 0.8 : 0.15,
        0,
        0,
        0.12 + 0.62 * part.sky + 0.3 * part.sun,
        0.06 + 0.12 * part.sky,
      )
      scale(brush, 1 + 0.15 * part.tint)
      throughAir(brush, air, part.z)
    },
    limb(part, brush) {
      light(brush, bark, 0, 0, 0.25 + 0.6 * part.sky)
      throughAir(brush, air, part.z)
    },
  })
}

function placeWood(
  strokes: Strokes,
  camera: Camera,
  palette: Palette,
  seed: number,
  air: Air,
  ground: BarnGround,
): void {
  const leaf = palette.of('leaf')
  const yellow = palette.of('yellowLeaf')
  const conifer = palette.of('pine')
  const bark = palette.of('bark')
  const wood = growFarWood({
    seed,
    nearM: 210,
    farM: 560,
    rows: 4,
    halfSlope: camera.centreX / camera.focalPx,
    heightM: [5, 14],
    spacingM: 4.6,
    sprays: 620,
    conifers: 0.2,
    sun: zenith,
    groundM: (_x, z) => (z - 210) * 0.02,
    cover: ground.woodCover,
  })
  placeFoliage(strokes, wood.foliage, wood.lit, camera, zenith, {
    leaf(part, brush) {
      const material = part.kind === farWoodKind.conifer ? conifer : leaf
      lightMix(
        brush,
        material,
        yellow,
        part.tint > 0.3 && material === leaf ? 0.6 : 0,
        0,
        0,
        0.3 * part.sun + 0.65 * part.sky,
        0.05,
      )
      throughAir(brush, air, part.z)
    },
    limb(part, brush) {
      light(brush, bark, 0, 0, part.sky)
      throughAir(brush, air, part.z)
    },
  })
}

export const barn: Scene = {
  id: 'barn',
  title: 'Farm track under overcast',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const view = { focalWidths: 0.76, horizon: 0.47, eyeM: 1.62 }
    const camera = createCamera(size, view)
    const overcast = createOvercast(palette, { seed, brightAcross: -0.14, brightUp: 0.3 })
    const air = createAir(palette, 1300, 0, 0, 0.78)
    const trees = growTrees(seed)

    const mirrorScale = mirrorWidth / size.width
    const below = createCamera({ width: mirrorWidth, height: size.height * mirrorScale }, { ...view, eyeM: -view.eyeM })
    const picture = createBand(mirrorWidth, Math.round(size.height * mirrorScale), 0, Math.ceil(below.horizonY))
    const ground = createBarnGround(palette, seed, air, camera, { picture, scale: mirrorScale })
    const grass: GrassOptions = {
      seed,
      nearM: 1.45,
      farM: 75,
      bladesPerM2: 1500,
      widthM: 0.0038,
      sward: ground.sward,
      colour: ground.bladeColour,
    }
    const standing = (strokes: Strokes, from: Camera) => {
      placeTrees(strokes, from, palette, air, trees)
      addFence(strokes, from, {
        seed,
        posts: postsAt.map(fence),
        heightM: 1.2,
        wires: [0.42, 0.76, 1.08],
        wood: palette.of('timber'),
        metal: palette.of('metal'),
        sun: 0,
        sky: 0,
        overcast: 0.62,
      })
    }
    const mirrored = createStrokes()
    standing(mirrored, below)
    sortStrokes(mirrored)
    paintOvercast(picture, below, overcast)
    const low = sowGrass(below, { ...grass, farM: 22, bladesPerM2: 500, widthM: 0.006 })
    paintStrokes(
      picture,
      mirrored,
      [createBarn(below, palette, seed), ...low].sort((a, b) => b.z - a.z),
    )

    const strokes = createStrokes()
    standing(strokes, camera)
    placeWood(strokes, camera, palette, seed, air, ground)
    scatterLitter(strokes, camera, palette, seed, ground)
    sortStrokes(strokes)
    const solids = [createBarn(camera, palette, seed), ...sowGrass(camera, grass)].sort((a, b) => b.z - a.z)
    return {
      paint(band) {
        paintOvercast(band, camera, overcast)
        paintGround(band, camera, 3000, ground.colour)
        paintStrokes(band, strokes, solids)
      },
    }
  },
}
