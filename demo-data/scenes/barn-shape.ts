// The barn's measures and planes in metres: one place for walls, roof and door, asked by its painter and by the ground.
import type { Plane } from '../paint/plane.ts'
import { unitVector, type Vector } from '../paint/vector.ts'

export const widthM = 8.6
export const lengthM = 13
export const eavesM = 3.9
export const ridgeM = 7.1
export const near: Vector = [3, 0, 17.5]
const acrossFront = unitVector([7.6, 0, -4])
const alongSide = unitVector([4, 0, 7.6])
const up: Vector = [0, 1, 0]
const far: Vector = [near[0] - widthM * acrossFront[0], 0, near[2] - widthM * acrossFront[2]]

export const front: Plane = { origin: far, u: acrossFront, v: up }
export const side: Plane = { origin: near, u: alongSide, v: up }
export const overhang = 0.4
export const rise = ridgeM - eavesM
export const slopeM = Math.hypot(widthM / 2, rise)
export const roof: Plane = {
  origin: [
    near[0] - overhang * alongSide[0] + 0.3 * acrossFront[0],
    eavesM - 0.3 * (rise / (widthM / 2)),
    near[2] - overhang * alongSide[2] + 0.3 * acrossFront[2],
  ],
  u: alongSide,
  v: unitVector([-acrossFront[0] * (widthM / 2), rise, -acrossFront[2] * (widthM / 2)]),
}
/** The other slope, of which only the underside of the overhang is seen. */
export const leftRoof: Plane = {
  origin: [
    far[0] - overhang * alongSide[0] - 0.32 * acrossFront[0],
    eavesM - 0.32 * (rise / (widthM / 2)),
    far[2] - overhang * alongSide[2] - 0.32 * acrossFront[2],
  ],
  u: alongSide,
  v: unitVector([acrossFront[0] * (widthM / 2), rise, acrossFront[2] * (widthM / 2)]),
}
export const door = { from: 3.05, to: 6.1, top: 3.15, open: 4.75, distance: 19.4 }

/** Middle of the door at the ground, where the track ends. */
export const doorstep = { x: far[0] + 4.5 * acrossFront[0], z: far[2] + 4.5 * acrossFront[2] }

/** Whether the ground at X, Z lies under the barn. */
export function underBarn(x: number, z: number): boolean {
  const s = (x - far[0]) * acrossFront[0] + (z - far[2]) * acrossFront[2]
  const t = (x - far[0]) * alongSide[0] + (z - far[2]) * alongSide[2]
  return s > -0.1 && s < widthM + 0.1 && t > -0.05 && t < lengthM
}
