// A slatted bench in front of the fence, square to the view: two end frames, three slats of back, a seat seen from above.
import type { Palette } from '../light/triplets.ts'
import { type Brush, createBrush, lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import type { Band } from '../paint/canvas.ts'
import { hashUnit } from '../paint/hash.ts'
import { fbm2 } from '../paint/noise.ts'
import { paintPlane, type Plane } from '../paint/plane.ts'
import type { Solid } from '../paint/strokes.ts'
import type { Vector } from '../paint/vector.ts'

const seatM = 0.44
const depthM = 0.46

/** A bench `widthM` wide whose front left foot stands at X, Z. `sunAt` as for the fence. */
export function createBench(
  camera: Camera,
  palette: Palette,
  seed: number,
  sun: Vector,
  place: { readonly x: number; readonly z: number; readonly widthM: number },
  sunAt: (x: number, y: number, z: number) => number,
): Solid {
  const timber = palette.of('timber')
  const wood = palette.of('wood')
  const { x, z, widthM } = place
  const slat = (
    band: Band,
    brush: Brush,
    plane: Plane,
    size: readonly [number, number],
    facing: number,
    upright: boolean,
    id: number,
  ) => {
    const corners = [
      [0, 0],
      [size[0], 0],
      [size[0], size[1]],
      [0, size[1]],
    ] as const
    const [ox, oy, oz] = plane.origin
    paintPlane(band, camera, plane, corners, brush, (s, t, along, up) => {
      const [run, cross, fp] = upright ? [t, s, along] : [s, t, up]
      const grain = fbm2(run / 0.45 + id * 9, cross / 0.012, 4, seed + id, fp / 0.012)
      const level = plane.v[1] === 0
      const direct = facing * sunAt(ox + s, level ? oy : oy + t, level ? oz + t : oz)
      lightMix(brush, timber, wood, 0.45 + 0.2 * hashUnit(id, seed), direct, level ? 0.7 : 0.42, 0, 0.06)
      scale(brush, (0.85 + 0.3 * hashUnit(id, seed, 2)) * (1 + 0.3 * grain))
    })
  }
  const front = (px: number, py: number, pz: number): Plane => ({ origin: [px, py, pz], u: [1, 0, 0], v: [0, 1, 0] })
  const top = (px: number, py: number, pz: number): Plane => ({ origin: [px, py, pz], u: [1, 0, 0], v: [0, 0, 1] })
  const ahead = -sun[2]
  const high = sun[1]
  return {
    z,
    paint(band) {
      const brush = createBrush()
      const rear = z + depthM
      for (const px of [x, x + widthM - 0.07])
        slat(band, brush, front(px, 0, rear), [0.07, 0.92], ahead, true, px > x ? 1 : 2)
      for (let k = 0; k < 4; k++)
        slat(band, brush, front(x + 0.02, 0.53 + 0.1 * k, rear - 0.02), [widthM - 0.04, 0.075], ahead, false, 3 + k)
      for (let k = 0; k < 4; k++)
        slat(band, brush, top(x, seatM, rear - 0.1 - 0.115 * k), [widthM, 0.1], high, false, 8 + k)
      slat(band, brush, front(x, seatM - 0.06, z), [widthM, 0.06], ahead, false, 14)
      for (const px of [x, x + widthM - 0.07]) {
        slat(band, brush, front(px, 0, z), [0.07, 0.64], ahead, true, px > x ? 15 : 16)
        slat(band, brush, top(px - 0.01, 0.64, z), [0.09, depthM], high, true, px > x ? 17 : 18)
        slat(band, brush, front(px - 0.01, 0.6, z - 0.01), [0.09, 0.04], ahead, false, px > x ? 19 : 20)
      }
    },
  }
}
