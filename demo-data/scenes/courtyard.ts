// Frame 5: a courtyard half in shade, 590 nm. The line of the shadow crosses paving and plaster, so both can be measured in
// sun and in open shade; the vine and the pots bring leaves into both.
import { light, lightMix, scale } from '../paint/brush.ts'
import { createCamera, sunDirection } from '../paint/camera.ts'
import type { Band } from '../paint/canvas.ts'
import { createCumulus, paintCumulus } from '../paint/cumulus.ts'
import { createAir, throughAir } from '../paint/air.ts'
import { createBrickwork } from '../paint/brickwork.ts'
import { castOnFace } from '../paint/face-shadow.ts'
import type { Face } from '../paint/face.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { createLitFace, sunOn } from '../paint/lit-face.ts'
import { createPaving } from '../paint/paving.ts'
import { type Dye, placeFoliage } from '../paint/place-foliage.ts'
import { createPlanks } from '../paint/planks.ts'
import { createPot, potCasters } from '../paint/pots.ts'
import { createRoofTiles } from '../paint/roof-tiles.ts'
import { createRubble } from '../paint/rubble.ts'
import type { Scene } from '../paint/scene.ts'
import { createClearSky, paintClearSky } from '../paint/sky.ts'
import { createStrokes, paintStrokes, sortStrokes } from '../paint/strokes.ts'
import { sunPast } from '../paint/sun-casters.ts'
import type { Texture } from '../paint/surface.ts'
import { createCourtyardOpenings } from './courtyard-openings.ts'
import { growCourtyardPlants } from './courtyard-plants.ts'
import * as plan from './courtyard-plan.ts'
import { courtyardLight, createHouseWall } from './courtyard-walls.ts'

export const courtyard: Scene = {
  id: 'courtyard',
  title: 'Courtyard, half in shade',
  aspect: 3 / 2,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 0.72, horizon: 0.58, eyeM: 1.6 })
    const sun = sunDirection(124, 41)
    const sky = createClearSky(palette, 0.3)
    const cumulus = createCumulus({ seed, sun, cover: -0.2, offsetKm: [11, 9], reach: 0.7, top: 0.55 })
    const skyAir = createAir(palette, 26000, 0.12, 1.2)
    const air = createAir(palette, 3000, 0.06, 0.5)
    const around = courtyardLight(sun)
    const potShadows = plan.pots.flatMap((pot) => potCasters(pot, sun[0], sun[2]))
    const lit = { ...around, casters: [...around.casters, ...potShadows] }
    const plants = growCourtyardPlants(seed)
    const near = [plants.vine, ...plants.potted]

    const stone = palette.of('limestone')
    const timber = palette.of('timber')
    const grey = palette.of('asphalt')
    const faces: ((band: Band) => void)[] = []
    const add = (face: Face, texture: Texture, cellM = 0) =>
      faces.push(
        createLitFace(camera, stone, lit, {
          face,
          texture,
          shadow: cellM ? castOnFace(near, face, sun, cellM) : undefined,
        }),
      )
    const slab =
      (tone: number): Texture =>
      (u, v, fp, out) => {
        paving(u + 31.7, v + 17.2, fp, out)
        out.first = stone
        out.second = stone
        out.tone *= tone
      }
    const paving = createPaving(palette, { seed: seed + 20, rowM: 0.52, stoneM: 0.8, sun: sunOn(plan.floor, sun) })
    const boards = createPlanks(palette.of('paint'), timber, seed + 30, 0.105, 0.1)
    const slats = createPlanks(timber, grey, seed + 31, 0.3, 0.1)
    const aloft = { ...lit, sky: () => 0.85, bounce: () => 0.02 }
    const roofTiles = createRoofTiles(palette, seed + 21, sunOn(plan.roof, sun))
    faces.push(createLitFace(camera, stone, aloft, { face: plan.roof, texture: roofTiles }))
    for (const face of plan.chimneyStack)
      faces.push(
        createLitFace(camera, stone, aloft, { face, texture: createBrickwork(palette, seed + 25, sunOn(face, sun)) }),
      )
    for (const face of plan.chimneyCap) faces.push(createLitFace(camera, stone, aloft, { face, texture: slab(1.2) }))
    add(plan.farWall, createHouseWall(palette, seed, sun), 0.006)
    const openings = createCourtyardOpenings(camera, palette, seed, lit)
    add(plan.eavesBoard, slats)
    const trim: ((band: Band) => void)[] = []
    const addTrim = (list: readonly Face[], texture: Texture) => {
      for (const face of list) trim.push(createLitFace(camera, stone, lit, { face, texture }))
    }
    addTrim(plan.sills, slab(1.5))
    addTrim(plan.shutters, boards)
    const ground: ((band: Band) => void)[] = []
    ground.push(
      createLitFace(camera, stone, lit, {
        face: plan.floor,
        texture: paving,
        shadow: castOnFace(near, plan.floor, sun, 0.008),
      }),
    )
    for (const face of plan.doorstep) ground.push(createLitFace(camera, stone, lit, { face, texture: slab(1.3) }))
    for (const face of [plan.leftWall, plan.leftCopingEdge, plan.leftCoping]) {
      const texture = face === plan.leftWall ? createRubble(palette, seed + 23, 0.36, sunOn(face, sun)) : slab(1.35)
      ground.push(createLitFace(camera, stone, lit, { face, texture, shadow: castOnFace(near, face, sun, 0.015) }))
    }
    ground.push(
      createLitFace(camera, stone, lit, {
        face: plan.rightWall,
        texture: createBrickwork(palette, seed + 24, sunOn(plan.rightWall, sun)),
      }),
    )
    ground.push(createLitFace(camera, stone, lit, { face: plan.wingBoard, texture: slats }))
    ground.push(
      createLitFace(camera, stone, lit, {
        face: plan.wingTiles,
        texture: createRoofTiles(palette, seed + 26, sunOn(plan.wingTiles, sun)),
      }),
    )
    for (const face of plan.benchLegs) ground.push(createLitFace(camera, stone, lit, { face, texture: slats }))
    for (const face of plan.benchSlats)
      ground.push(
        createLitFace(camera, stone, lit, { face, texture: (u, v, fp, out) => slats(v + face.corner[2], u, fp, out) }),
      )

    const behind = createStrokes()
    const dye = leafDye()
    function leafDye(): (name: 'leaf' | 'mapleLeaf', far: boolean) => Dye {
      return (name, far) => {
        const leaf = palette.of(name)
        const old = palette.of('yellowLeaf')
        const flower = palette.of('cotton')
        const bark = palette.of('bark')
        const brushAir = (part: { z: number }, brush: Parameters<Dye['leaf']>[1]) => {
          if (far) throughAir(brush, air, part.z)
        }
        return {
          leaf(part, brush) {
            const open = far ? 1 : sunPast(lit.casters, sun, part.x, part.y, part.z)
            const direct = part.sun * open
            const skyShare = part.sky * (far ? 0.9 : around.sky(part.x, part.y, part.z, [0, 1, 0]))
            const bounce = around.bounce(part.x, part.y, part.z, [0, 0, -1]) * (0.4 + 0.6 * part.sky)
            const glow = 0.16 * open * part.sky
            if (part.kind === 1) light(brush, flower, direct * 1.1 + bounce, skyShare)
            else lightMix(brush, leaf, old, part.tint > 0.82 ? 0.5 : 0, direct * 1.15 + bounce, skyShare, 0, glow)
            scale(brush, 1 + 0.2 * part.tint)
            brush.sun = Math.min(1, direct)
            brushAir(part, brush)
          },
          limb(part, brush) {
            const open = far ? 1 : sunPast(lit.casters, sun, part.x, part.y, part.z)
            light(brush, bark, part.sun * open * 1.2 + 0.05, 0.5 * part.sky)
            brush.sun = Math.min(1, part.sun * open)
            brushAir(part, brush)
          },
        }
      }
    }
    placeFoliage(
      behind,
      plants.tree,
      lightFoliage(plants.tree, { sun, cellM: 0.36, extinction: 0.9 }),
      camera,
      sun,
      dye('leaf', true),
    )
    sortStrokes(behind)
    const strokes = createStrokes()
    near.forEach((plant, i) => {
      const light = lightFoliage(plant, { sun, cellM: i === 0 ? 0.09 : 0.05, extinction: i === 0 ? 0.4 : 0.8 })
      placeFoliage(strokes, plant, light, camera, sun, dye(i % 3 === 1 ? 'mapleLeaf' : 'leaf', false))
    })
    sortStrokes(strokes)
    const solids = plan.pots
      .map((pot) =>
        createPot(camera, palette, pot, palette.of(pot.kind === 'clay' ? 'brick' : 'concrete'), lit, around.casters),
      )
      .toSorted((a, b) => b.z - a.z)

    return {
      paint(band) {
        paintClearSky(band, camera, sky)
        paintCumulus(band, camera, cumulus, palette, skyAir)
        paintStrokes(band, behind)
        for (const paint of faces) paint(band)
        for (const paint of openings) paint(band)
        for (const paint of trim) paint(band)
        for (const paint of ground) paint(band)
        paintStrokes(band, strokes, solids)
      },
    }
  },
}
