// A field fence of split posts and sagging wire, as limbs among the other strokes.
import type { Material } from '../light/triplets.ts'
import { createBrush, light } from './brush.ts'
import { type Camera, columnOf, rowOf } from './camera.ts'
import { hashUnit } from './hash.ts'
import { addLimbStroke, type Strokes } from './strokes.ts'

export interface FenceOptions {
  readonly seed: number
  /** Feet of the posts in m, in order. */
  readonly posts: readonly (readonly [x: number, z: number])[]
  readonly heightM: number
  readonly wires: readonly number[]
  readonly wood: Material
  readonly metal: Material
  /** Weights of sun, sky and overcast light. */
  readonly sun: number
  readonly sky: number
  readonly overcast: number
}

/** Adds posts and wires to `strokes`. */
export function addFence(strokes: Strokes, camera: Camera, options: FenceOptions): void {
  const { seed, posts, heightM } = options
  const brush = createBrush()
  const line = (
    x0: number,
    y0: number,
    z0: number,
    w0: number,
    x1: number,
    y1: number,
    z1: number,
    w1: number,
    tilt: number,
  ) => {
    const f = camera.focalPx
    addLimbStroke(
      strokes,
      (z0 + z1) / 2,
      columnOf(camera, x0, z0),
      rowOf(camera, y0, z0),
      (w0 * f) / z0,
      columnOf(camera, x1, z1),
      rowOf(camera, y1, z1),
      (w1 * f) / z1,
      tilt,
      brush,
    )
  }
  const lean = posts.map((_, i) => [0.16 * (hashUnit(i, seed, 1) - 0.5), 0.1 * (hashUnit(i, seed, 2) - 0.5)] as const)
  const top = posts.map((_, i) => heightM * (0.92 + 0.16 * hashUnit(i, seed, 3)))
  posts.forEach(([x, z], i) => {
    light(brush, options.wood, options.sun, options.sky, options.overcast * (0.8 + 0.3 * hashUnit(i, seed, 4)))
    const r = 0.042 + 0.014 * hashUnit(i, seed, 5)
    line(x, -0.1, z, r * 1.05, x + lean[i][0] * top[i], top[i], z + lean[i][1] * top[i], r * 0.86, 0.3)
  })
  light(brush, options.metal, 0.5 * options.sun, options.sky, 0.6 * options.overcast)
  for (let i = 0; i + 1 < posts.length; i++) {
    for (const [w, height] of options.wires.entries()) {
      const sag = 0.03 + 0.1 * hashUnit(i, w, seed, 7) ** 2
      const parts = 8
      const at = (t: number) => {
        const k = (j: number) => height * (1 + 0.04 * (hashUnit(j, w, seed, 8) - 0.5))
        const x0 = posts[i][0] + lean[i][0] * height
        const x1 = posts[i + 1][0] + lean[i + 1][0] * height
        return [
          x0 + (x1 - x0) * t,
          k(i) + (k(i + 1) - k(i)) * t - 4 * sag * t * (1 - t),
          posts[i][1] + (posts[i + 1][1] - posts[i][1]) * t - 0.06,
        ] as const
      }
      for (let p = 0; p < parts; p++) {
        const [ax, ay, az] = at(p / parts)
        const [bx, by, bz] = at((p + 1) / parts)
        line(ax, ay, az, 0.0016, bx, by, bz, 0.0016, 0)
      }
    }
  }
}
