// The courtyard as solids: a house across the far end, a rubble wall on the left, a brick wing on the right that throws the
// shadow, and what stands out from the walls. Metres; the far wall is at z = 11.
import { boxFaces, createFace, type Face, type Spot } from '../paint/face.ts'
import type { Opening } from '../paint/opening.ts'
import type { Pot } from '../paint/pots.ts'

export const wallZ = 11
export const leftX = -5.1
export const rightX = 3.7
export const eavesM = 5.3

export const door: Opening = { x0: -1.35, x1: -0.05, y0: 0, y1: 1.75, arched: true }
export const windows: readonly Opening[] = [
  { x0: -4.05, x1: -2.95, y0: 0.95, y1: 2.4, arched: false },
  { x0: 1.15, x1: 2.25, y0: 0.95, y1: 2.4, arched: false },
  { x0: -4.05, x1: -2.95, y0: 3.25, y1: 4.5, arched: false },
  { x0: -1.2, x1: -0.2, y0: 3.25, y1: 4.5, arched: false },
  { x0: 1.15, x1: 2.25, y0: 3.25, y1: 4.5, arched: false },
]

export const farWall = createFace([-5.6, 0, wallZ], [1, 0, 0], [0, 1, 0], 18, eavesM + 0.1)
export const leftWall = createFace([leftX, 0, 2.5], [0, 0, 1], [0, 1, 0], wallZ - 2.5, 2.5)
export const leftCoping = createFace([leftX - 0.4, 2.58, 2.5], [1, 0, 0], [0, 0, 1], 0.44, wallZ - 2.5)
export const leftCopingEdge = createFace([leftX + 0.04, 2.48, 2.5], [0, 0, 1], [0, 1, 0], wallZ - 2.5, 0.1)
export const rightWall = createFace([rightX, 0, wallZ], [0, 0, -1], [0, 1, 0], 9.5, 3.95)
export const floor = createFace([leftX - 0.05, 0, 0.5], [1, 0, 0], [0, 0, 1], rightX - leftX + 0.1, wallZ - 0.5)

/** The far roof rises from its eaves, away from the camera. */
const roofPitch = 0.62
const roofRun = Math.hypot(1, roofPitch)
export const roof = createFace(
  [-5.9, eavesM - 0.02, wallZ - 0.42],
  [1, 0, 0],
  [0, roofPitch / roofRun, 1 / roofRun],
  19,
  4.4,
)
const eaves = createFace([-5.9, eavesM + 0.1, wallZ - 0.5], [1, 0, 0], [0, 0, 1], 19, 0.6)
export const eavesBoard = createFace([-5.9, eavesM - 0.14, wallZ - 0.4], [1, 0, 0], [0, 1, 0], 19, 0.12)

/** Roof of the wing, seen only by the sun, and a chimney on it. */
const wingRoof = createFace([rightX - 0.25, 3.9, 1.2], [0, 0, 1], [0.87, 0.5, 0], 9.8, 1.6)
/** Keeps the ground behind the wing dark. */
const wingFloor = createFace([rightX, 0.04, 0.5], [1, 0, 0], [0, 0, 1], 4, wallZ - 0.5)
const chimney = createFace([rightX + 0.45, 4, 7.1], [0, 0, 1], [0, 1, 0], 0.7, 1.75)

/** A chimney on the far roof and its cap. */
export const chimneyStack = boxFaces(-2.9, -2.1, 7.03, 8.55, 13.4, 14).filter((f) => f.normal[1] >= 0)
export const chimneyCap = boxFaces(-2.98, -2.02, 8.5, 8.63, 13.32, 14.08)

/** Cuts away what the brick wing hides, seen from an eye `eyeM` high. */
export function cutBehindWing(spot: Spot, eyeM: number): void {
  const across = spot.x / spot.z
  if (across <= 0) return
  const meetsZ = rightX / across
  if (meetsZ < spot.z && eyeM + ((spot.y - eyeM) / spot.z) * meetsZ < rightWall.height - 0.1) spot.cover = 0
}

/** Cuts away what lies below the far roof. */
export function cutAtRoof(spot: Spot): void {
  const above = spot.y - roof.corner[1] - roofPitch * (spot.z - roof.corner[2])
  spot.cover = Math.min(1, Math.max(0, above / spot.fpV + 0.5))
}

/** Top of the wing's wall: a board and the ends of its tiles. */
export const wingBoard = createFace([rightX - 0.16, 3.8, wallZ], [0, 0, -1], [0, 1, 0], 9.5, 0.14)
export const wingTiles = createFace([rightX - 0.22, 3.93, wallZ], [0, 0, -1], [0, 1, 0], 9.5, 0.07)

export const sills = windows.flatMap((o) =>
  boxFaces(o.x0 - 0.1, o.x1 + 0.1, o.y0 - 0.09, o.y0, wallZ - 0.11, wallZ + 0.02),
)

/** Shutters, open against the wall: x0 … x1 of each. */
export const shutters: readonly Face[] = windows
  .filter((_, i) => i !== 0 && i !== 1)
  .flatMap((o) => {
    const half = (o.x1 - o.x0) / 2
    return [o.x0 - half - 0.03, o.x1 + 0.03].flatMap((x) =>
      boxFaces(x, x + half, o.y0, o.y1, wallZ - 0.07, wallZ - 0.03),
    )
  })

/** A doorstep and a bench of planks under the left window. */
export const doorstep = boxFaces(door.x0 - 0.2, door.x1 + 0.2, 0, 0.13, wallZ - 0.55, wallZ)
export const benchSlats: readonly Face[] = [
  ...boxFaces(-4.35, -2.6, 0.42, 0.46, 10.36, 10.46),
  ...boxFaces(-4.35, -2.6, 0.42, 0.46, 10.49, 10.59),
  ...boxFaces(-4.35, -2.6, 0.42, 0.46, 10.62, 10.72),
]
export const benchLegs: readonly Face[] = [
  ...boxFaces(-4.25, -4.17, 0, 0.42, 10.62, 10.7),
  ...boxFaces(-2.78, -2.7, 0, 0.42, 10.62, 10.7),
  ...boxFaces(-4.25, -4.17, 0, 0.42, 10.38, 10.46),
  ...boxFaces(-2.78, -2.7, 0, 0.42, 10.38, 10.46),
]

export const pots: readonly Pot[] = [
  { x: -3.3, z: 6.7, radiusM: 0.36, heightM: 0.6, kind: 'clay', seed: 11 },
  { x: -2.55, z: 7.5, radiusM: 0.24, heightM: 0.36, kind: 'bowl', seed: 12 },
  { x: 0.35, z: 10.35, radiusM: 0.25, heightM: 0.44, kind: 'clay', seed: 13 },
  { x: 2.75, z: 9.9, radiusM: 0.3, heightM: 0.52, kind: 'tub', seed: 14 },
  { x: 2.9, z: 8.6, radiusM: 0.27, heightM: 0.42, kind: 'clay', seed: 15 },
  { x: 2.35, z: 5.95, radiusM: 0.38, heightM: 0.62, kind: 'tub', seed: 16 },
  { x: -1.75, z: 10.4, radiusM: 0.22, heightM: 0.34, kind: 'clay', seed: 17 },
]

export const solidCasters: readonly Face[] = [
  leftWall,
  rightWall,
  wingRoof,
  wingFloor,
  chimney,
  eaves,
  ...sills,
  ...shutters,
  ...doorstep,
  ...benchSlats,
  ...benchLegs,
]
