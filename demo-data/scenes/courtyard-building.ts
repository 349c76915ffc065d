// Everything built in the courtyard as painters, in the order far to near.
import type { Palette } from '../light/triplets.ts'
import { createBrickwork } from '../paint/brickwork.ts'
import type { Camera } from '../paint/camera.ts'
import type { Band } from '../paint/canvas.ts'
import { castOnFace } from '../paint/face-shadow.ts'
import type { Face, Spot } from '../paint/face.ts'
import type { Foliage } from '../paint/foliage.ts'
import { createLitFace, sunOn, type Surroundings } from '../paint/lit-face.ts'
import { createPaving } from '../paint/paving.ts'
import { createPlanks } from '../paint/planks.ts'
import { createRoofTiles } from '../paint/roof-tiles.ts'
import { createRubble } from '../paint/rubble.ts'
import type { Texture } from '../paint/surface.ts'
import { createCourtyardOpenings } from './courtyard-openings.ts'
import * as plan from './courtyard-plan.ts'
import { createHouseWall } from './courtyard-walls.ts'

/** `plants` cast shadows on walls and ground. */
export function buildCourtyard(
  camera: Camera,
  palette: Palette,
  seed: number,
  around: Surroundings,
  plants: readonly Foliage[],
): ((band: Band) => void)[] {
  const { sun } = around
  const stone = palette.of('limestone')
  const timber = palette.of('timber')
  const aloft: Surroundings = { sun, casters: plan.chimneyStack, sky: () => 0.85, bounce: () => 0.02 }
  const face = (it: Face, texture: Texture, light = around, cut?: (spot: Spot) => void) =>
    createLitFace(camera, stone, light, { face: it, texture, cut })
  const shadedFace = (it: Face, texture: Texture, cellM: number, cut?: (spot: Spot) => void) =>
    createLitFace(camera, stone, around, { face: it, texture, shadow: castOnFace(plants, it, sun, cellM), cut })

  const paving = createPaving(palette, { seed: seed + 20, rowM: 0.52, stoneM: 0.8, sun: sunOn(plan.floor, sun) })
  const slab =
    (tone: number): Texture =>
    (u, v, fp, out) => {
      paving(u + 31.7, v + 17.2, fp, out)
      out.first = stone
      out.second = stone
      out.tone *= tone
    }
  const tiles = (it: Face, own: number) => createRoofTiles(palette, seed + own, sunOn(it, sun))
  const bricks = (it: Face, own: number) => createBrickwork(palette, seed + own, sunOn(it, sun))
  const shutterBoards = createPlanks(palette.of('paint'), timber, seed + 30, 0.105, 0.1)
  const boards = createPlanks(timber, palette.of('asphalt'), seed + 31, 0.3, 0.1)
  const lengthwise =
    (own: number): Texture =>
    (u, v, fp, out) =>
      boards(v + own, u, fp, out)

  return [
    face(plan.roof, tiles(plan.roof, 21), aloft),
    ...plan.chimneyStack.map((it) => face(it, bricks(it, 25), aloft, plan.cutAtRoof)),
    ...plan.chimneyCap.map((it) => face(it, slab(1.2), aloft)),
    shadedFace(plan.farWall, createHouseWall(palette, seed, sun), 0.006, (spot) =>
      plan.cutBehindWing(spot, camera.eyeM),
    ),
    ...createCourtyardOpenings(camera, palette, seed, around),
    face(plan.eavesBoard, boards),
    ...plan.sills.map((it) => face(it, slab(1.5))),
    ...plan.shutters.map((it) => face(it, shutterBoards)),
    shadedFace(plan.floor, paving, 0.008),
    ...plan.doorstep.map((it) => face(it, slab(1.3))),
    shadedFace(plan.leftWall, createRubble(palette, seed + 23, 0.36, sunOn(plan.leftWall, sun)), 0.015),
    shadedFace(plan.leftCopingEdge, slab(1.35), 0.015),
    shadedFace(plan.leftCoping, slab(1.35), 0.015),
    face(plan.rightWall, bricks(plan.rightWall, 24)),
    face(plan.wingBoard, boards),
    face(plan.wingTiles, tiles(plan.wingTiles, 26)),
    ...plan.benchLegs.map((it) => face(it, boards)),
    ...plan.benchSlats.map((it) => face(it, lengthwise(it.corner[2]))),
  ]
}
