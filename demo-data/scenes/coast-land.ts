// The ground of the coast: a beach that dips to the left, a grassed headland on the right, sea rocks and a stack.
// Metres; 0 is still water. The water's edge is a curve X = edgeAt(Z), from which beach, surf and headland take their distances.
import { fbm2, noise2 } from '../paint/noise.ts'
import { createRocks, type Rock } from '../paint/rocks.ts'
import { seaHeight } from '../paint/sea.ts'
import { tabulate } from '../paint/tabulate.ts'
import { strewStones } from './coast-stones.ts'

const rocks: readonly Rock[] = [
  { x: -30, z: 135, radiusM: 10, heightM: 26, blunt: 0.5 },
  { x: -20, z: 128, radiusM: 5, heightM: 8, blunt: 0.6 },
  { x: -5, z: 92, radiusM: 5, heightM: 3.6, blunt: 0.9 },
  { x: 9, z: 78, radiusM: 4.5, heightM: 3, blunt: 0.9 },
  { x: -11, z: 42, radiusM: 4.4, heightM: 2.6, blunt: 0.9 },
  { x: -6.4, z: 27, radiusM: 2.8, heightM: 1.7, blunt: 0.9 },
  { x: 1.2, z: 39, radiusM: 2.5, heightM: 1.4, blunt: 0.9 },
  { x: 6.2, z: 29, radiusM: 2.3, heightM: 1.2, blunt: 0.9 },
  { x: -2.6, z: 16.5, radiusM: 1.5, heightM: 1, blunt: 0.9 },
  { x: 14, z: 34, radiusM: 4.6, heightM: 3.4, blunt: 0.9 },
  { x: 9.6, z: 20, radiusM: 3.2, heightM: 2.1, blunt: 0.9 },
  { x: 4.6, z: 10.4, radiusM: 2.1, heightM: 1.5, blunt: 0.9 },
  { x: 2.1, z: 12.6, radiusM: 1.1, heightM: 0.75, blunt: 0.9 },
  { x: 24, z: 62, radiusM: 6, heightM: 4.4, blunt: 0.9 },
]

function smooth(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

const edgeAt = tabulate(
  (z) => -2 + 0.28 * z - 85 * smooth(130, 330, z) + 500 * smooth(400, 760, z) + 1.1 * noise2(z / 9, 1.5, 351),
)

/** Metres seaward of the water's edge, negative on land. */
export function seawardAt(x: number, z: number): number {
  return (edgeAt(z) - x) * 0.96
}

/** Height of sand and headland without rocks. */
export function groundHeight(x: number, z: number, footprintM: number): number {
  const inland = -seawardAt(x, z)
  if (inland < -3) return Math.max(-1.2, 0.055 * inland)
  const beach = 0.055 * inland + 0.05 * smooth(-3, -1, inland) * noise2(x / 3.2, z / 4.1, 352)
  if (z < 85 || inland < 0) return beach
  const rise = smooth(85, 200, z) * smooth(0, 5, inland)
  const rugged = fbm2(x / 22, z / 26, 6, 353, footprintM / 22)
  const back = inland + 7 * rugged
  return (
    beach * (1 - rise) +
    rise * (9 * smooth(0, 9, back) + 36 * smooth(4, 130, back) + 2.6 * rugged * smooth(2, 20, back))
  )
}

const stones = strewStones(
  rocks,
  (x, z) => groundHeight(x, z, 0.05),
  (x, z) => -seawardAt(x, z),
  (inland, z) => edgeAt(z) + inland / 0.96,
)

/** Heights of the highest rock and of the highest stone over X, Z, below the ground around them, or −99 far from all. */
export const rockHeight = createRocks(rocks)
export const stoneHeight = createRocks(stones)

/** How far sand is banked up where it meets rock, m. */
const bankedM = 0.07

export function solidHeight(x: number, z: number, footprintM: number): number {
  const ground = groundHeight(x, z, footprintM)
  const rock = rockHeight(x, z, footprintM)
  const near = Math.max(0, bankedM - Math.abs(ground - rock))
  return Math.max(ground, rock, stoneHeight(x, z, footprintM)) + (near * near) / (4 * bankedM)
}

/** What the eye meets: ground, rock or water, whichever is highest. */
export function coastHeight(x: number, z: number, footprintM: number): number {
  const seaward = seawardAt(x, z)
  const solid = solidHeight(x, z, footprintM)
  return seaward < -1 ? solid : Math.max(solid, seaHeight(seaward, z, footprintM))
}

/** A surface above everything that the eye can meet: the coast without its finest detail, and a margin for it. */
export function coastCeiling(x: number, z: number): number {
  const tallest = Math.max(solidHeight(x - 1, z, 1), solidHeight(x, z, 1), solidHeight(x + 1, z, 1), 1.2)
  return tallest + 1 + 0.06 * z
}
