// A flat patch of a building in space, shaded point by point in its own metres: walls, roofs, doors.
// Every pixel meets the plane exactly, so boards and ribs run together in perspective without a texture image.
import type { Brush } from './brush.ts'
import { type Camera, columnOf, rowOf } from './camera.ts'
import type { Band } from './canvas.ts'
import { drawPatch } from './shapes.ts'
import { cross, dot, type Vector } from './vector.ts'

/**
 * A plane through `origin`, spanned by the unit vectors `u` (usually level) and `v` (usually up), at right angles. Seen from
 * the side where u runs to the right, its front is −(u × v).
 */
export interface Plane {
  readonly origin: Vector
  readonly u: Vector
  readonly v: Vector
}

/** The point of a plane at `s` metres along u and `t` along v, `out` metres in front of it. */
function pointOn(plane: Plane, s: number, t: number, out = 0): Vector {
  const { origin, u, v } = plane
  const n = cross(v, u)
  return [
    origin[0] + s * u[0] + t * v[0] + out * n[0],
    origin[1] + s * u[1] + t * v[1] + out * n[1],
    origin[2] + s * u[2] + t * v[2] + out * n[2],
  ]
}

/** The same plane moved `out` metres to its front. */
export function raised(plane: Plane, out: number): Plane {
  return { ...plane, origin: pointOn(plane, 0, 0, out) }
}

/**
 * Paints the convex patch with corners (s, t) in metres. `shade` sets the brush for a point; `along` and `up` are the metres
 * that a pixel spans in s and in t. All corners must lie in front of the camera.
 */
export function paintPlane(
  band: Band,
  camera: Camera,
  plane: Plane,
  corners: readonly (readonly [number, number])[],
  brush: Brush,
  shade: (s: number, t: number, along: number, up: number) => void,
): void {
  const { origin, u, v } = plane
  const n = cross(u, v)
  const eye: Vector = [0, camera.eyeM, 0]
  const toOrigin: Vector = [origin[0], origin[1] - camera.eyeM, origin[2]]
  const height = dot(n, toOrigin)
  const f = camera.focalPx
  const places = corners.map(([s, t]) => pointOn(plane, s, t))
  const xs = places.map((p) => columnOf(camera, p[0], p[2]))
  const ys = places.map((p) => rowOf(camera, p[1], p[2]))
  drawPatch(band, xs, ys, brush, (px, py) => {
    const dx = (px - camera.centreX) / f
    const dy = (camera.horizonY - py) / f
    const z = height / (n[0] * dx + n[1] * dy + n[2])
    const x = eye[0] + z * dx - origin[0]
    const y = eye[1] + z * dy - origin[1]
    const rz = z - origin[2]
    const length = Math.sqrt(1 + dx * dx + dy * dy)
    const du = (u[0] * dx + u[1] * dy + u[2]) / length
    const dv = (v[0] * dx + v[1] * dy + v[2]) / length
    const pixel = z / f
    shade(
      x * u[0] + y * u[1] + rz * u[2],
      x * v[0] + y * v[1] + rz * v[2],
      pixel / Math.sqrt(Math.max(0.01, 1 - du * du)),
      pixel / Math.sqrt(Math.max(0.01, 1 - dv * dv)),
    )
  })
}
