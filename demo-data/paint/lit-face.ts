// A face with its texture and all the light that falls on it: direct sun past flat casters and foliage, sky, and sunlight
// that bright surroundings send back.
import { createBrush } from './brush.ts'
import type { Camera } from './camera.ts'
import type { Band } from './canvas.ts'
import { createFacePainter, type Face, type Spot } from './face.ts'
import type { FaceShadow } from './face-shadow.ts'
import { createFaceSun } from './sun-casters.ts'
import { createSurface, lightSurface, type SunSlope, type Texture } from './surface.ts'
import { dot, type Vector } from './vector.ts'
import type { Material } from '../light/triplets.ts'

export interface Surroundings {
  readonly sun: Vector
  readonly casters: readonly Face[]
  /** Share of the sky seen from a point that faces `normal`, and sunlight returned to it by other surfaces. */
  sky(x: number, y: number, z: number, normal: Vector): number
  bounce(x: number, y: number, z: number, normal: Vector): number
}

/** Direction of the sun within a face, for its texture. */
export function sunOn(face: Face, sun: Vector): SunSlope {
  return { u: dot(sun, face.across), v: dot(sun, face.up) }
}

export interface LitFaceOptions {
  readonly face: Face
  readonly texture: Texture
  readonly shadow?: FaceShadow
  /** Sets `spot.cover` to cut a shape out of the face. */
  readonly cut?: (spot: Spot) => void
}

/** `base` is any material: what the surface is until the texture has said otherwise. */
export function createLitFace(
  camera: Camera,
  base: Material,
  around: Surroundings,
  options: LitFaceOptions,
): (band: Band) => void {
  const { face, texture, shadow, cut } = options
  const brush = createBrush()
  const surface = createSurface(base)
  const sunAt = createFaceSun(face, around.casters, around.sun)
  const facing = Math.max(0, dot(face.normal, around.sun))
  return createFacePainter(camera, face, brush, (spot) => {
    if (cut) cut(spot)
    if (spot.cover <= 0) return
    const fp = Math.sqrt(spot.fpU * spot.fpV)
    texture(spot.u, spot.v, fp, surface)
    let direct = facing > 0 ? facing * sunAt(spot.u, spot.v, spot.x, spot.y, spot.z) : 0
    if (direct > 0 && shadow) direct *= shadow.at(spot.u, spot.v)
    const { x, y, z } = spot
    lightSurface(brush, surface, direct, around.sky(x, y, z, face.normal), around.bounce(x, y, z, face.normal))
  })
}
