// Plants of the courtyard: a vine around the door, one plant in every pot, and a tree beyond the rubble wall.
import { addLeaf, createFoliage, type Foliage } from '../paint/foliage.ts'
import { hashUnit } from '../paint/hash.ts'
import { growShrub } from '../paint/shrub.ts'
import { growBall } from '../paint/topiary.ts'
import { growTree } from '../paint/tree.ts'
import { growVine } from '../paint/vine.ts'
import { door, pots, wallZ, windows } from './courtyard-plan.ts'

export interface CourtyardPlants {
  readonly vine: Foliage
  readonly potted: readonly Foliage[]
  readonly tree: Foliage
  /** Leaves on the ground. */
  readonly fallen: Foliage
}

export function growCourtyardPlants(seed: number): CourtyardPlants {
  const vine = createFoliage()
  growVine(vine, {
    seed,
    x: -2.15,
    wallZ,
    topM: 4.9,
    leafM: 0.068,
    stemM: 260,
    openings: [door, ...windows],
    lean: -0.1,
  })
  const potted = pots.map((pot, i) => {
    const plant = createFoliage()
    const y = pot.heightM * 0.93
    const own = { seed: seed + 100 + i, foot: [pot.x, y, pot.z] as const }
    if (pot.kind === 'tub')
      growBall(plant, own.seed, [pot.x, y + pot.radiusM * 0.98, pot.z], pot.radiusM * 1.12, 0.022, 2600)
    else if (pot.kind === 'bowl')
      growShrub(plant, {
        ...own,
        heightM: 0.3,
        widthM: 0.72,
        stems: 26,
        leafM: 0.035,
        slim: 0.4,
        shoots: 9,
        leavesPerShoot: 7,
        flowering: 0.4,
        flowerM: 0.05,
      })
    else
      growShrub(plant, {
        ...own,
        heightM: pot.heightM * (1.15 + 0.25 * (i % 3)),
        widthM: pot.radiusM * 3,
        stems: 20,
        leafM: 0.055 + 0.02 * (i % 2),
        slim: 0.26 + 0.1 * (i % 2),
        shoots: 12,
        leavesPerShoot: 8,
        flowering: i === 0 ? 0.3 : 0,
        flowerM: 0.08,
      })
    return plant
  })
  const tree = createFoliage()
  growTree(tree, {
    seed: seed + 7,
    foot: [-9.6, 0, 16.5],
    heightM: 8.5,
    radiusM: 3.9,
    clearM: 1.6,
    lobes: 26,
    points: 2400,
    leafM: 0.11,
    leavesPerTwig: 8,
    twigs: 4,
  })
  return { vine, potted, tree, fallen: scatterLeaves(seed) }
}

function scatterLeaves(seed: number): Foliage {
  const fallen = createFoliage()
  for (let i = 0; i < 190; i++) {
    const near = hashUnit(seed, 50, i, 1)
    const x = -4.9 + 6.5 * hashUnit(seed, 50, i, 2) ** 1.4
    const z = 10.8 - 6.5 * near * near
    const turn = 6.2832 * hashUnit(seed, 50, i, 3)
    const size = 0.045 + 0.035 * hashUnit(seed, 50, i, 4)
    const curl = 0.5 * hashUnit(seed, 50, i, 5)
    const tint = 2 * hashUnit(seed, 50, i, 6) - 1
    const ax = Math.sin(turn) * size
    const az = Math.cos(turn) * size
    addLeaf(fallen, x, 0.004, z, ax, curl * size, az, 0.5 * tint, 1, 0.4 * tint, size * 0.36, tint)
  }
  return fallen
}
