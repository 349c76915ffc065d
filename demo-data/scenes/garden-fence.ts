// The garden's boundary: a close-boarded fence across the view with a capping rail, lit by the sun except where plants throw
// their shadow on it.
import type { Palette } from '../light/triplets.ts'
import { boardAt, type BoardSpot } from '../paint/boards.ts'
import { createBrush, lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import { fbm2 } from '../paint/noise.ts'
import { paintPlane, type Plane } from '../paint/plane.ts'
import type { Solid } from '../paint/strokes.ts'
import type { Vector } from '../paint/vector.ts'
import { fenceZ } from './garden-plan.ts'

const halfM = 11
const heightM = 1.85
const capM = 0.07
/** Boards are rotten in their lowest 25 cm; the fence uses what is above. */
const soundM = 0.26

/** `sunAt` is the share of direct sun at a point in space. */
export function createGardenFence(
  camera: Camera,
  palette: Palette,
  seed: number,
  sun: Vector,
  sunAt: (x: number, y: number, z: number) => number,
): Solid {
  const timber = palette.of('timber')
  const wood = palette.of('wood')
  const plane: Plane = { origin: [-halfM, 0, fenceZ], u: [1, 0, 0], v: [0, 1, 0] }
  const facing = -sun[2]
  const rectangle = (low: number, high: number) =>
    [
      [0, low],
      [2 * halfM, low],
      [2 * halfM, high],
      [0, high],
    ] as const
  return {
    z: fenceZ,
    paint(band) {
      const brush = createBrush()
      const spot: BoardSpot = { lightness: 1, fresh: 0, gap: 0 }
      paintPlane(band, camera, plane, rectangle(0, heightM), brush, (s, t, along, up) => {
        boardAt(s, t + soundM, along, up, seed, spot)
        const shadow = t > heightM - 0.07 ? 0.15 : 1
        const direct = facing * shadow * sunAt(s - halfM, t, fenceZ)
        lightMix(brush, timber, wood, 0.25 + 0.5 * spot.fresh, direct, 0.28 + 0.22 * (t / heightM), 0, 0.06)
        scale(brush, spot.lightness * (1 - 0.9 * spot.gap) * (0.55 + 0.45 * Math.min(1, t / 0.5)))
      })
      paintPlane(band, camera, plane, rectangle(heightM, heightM + capM), brush, (s, t, along) => {
        lightMix(brush, timber, wood, 0.4, facing * sunAt(s - halfM, t, fenceZ), 0.6)
        scale(brush, 1 + 0.3 * fbm2(s / 0.4, t / 0.02, 4, seed + 5, along / 0.02))
      })
    },
  }
}
