// A flat rectangle in space that is shaded pixel by pixel: walls, floors, roofs, steps, shutters. Coordinates on it are metres
// from its corner, so texture keeps its size in every perspective.
import type { Brush } from './brush.ts'
import type { Camera } from './camera.ts'
import type { Band } from './canvas.ts'
import { drawPatch } from './shapes.ts'
import { along, cross, dot, type Vector } from './vector.ts'

export interface Face {
  readonly corner: Vector
  /** Unit directions of the two sides; `normal` = up × across points to the side that is seen. */
  readonly across: Vector
  readonly up: Vector
  readonly normal: Vector
  readonly width: number
  readonly height: number
}

/** A point on a face as one pixel sees it. */
export interface Spot {
  /** Metres from the corner along `across` and `up`. */
  u: number
  v: number
  x: number
  y: number
  z: number
  /** Width of the pixel on the face in metres, along `across` and `up`. */
  fpU: number
  fpV: number
  /** Share of the pixel that the surface covers; set below 1 to cut a shape out of the face. */
  cover: number
}

export function createFace(corner: Vector, across: Vector, up: Vector, width: number, height: number): Face {
  return { corner, across, up, width, height, normal: cross(up, across) }
}

/** Sides of an upright box: left, right, underside, top and front. */
export function boxFaces(x0: number, x1: number, y0: number, y1: number, z0: number, z1: number): Face[] {
  return [
    createFace([x0, y0, z1], [0, 0, -1], [0, 1, 0], z1 - z0, y1 - y0),
    createFace([x1, y0, z0], [0, 0, 1], [0, 1, 0], z1 - z0, y1 - y0),
    createFace([x0, y0, z1], [1, 0, 0], [0, 0, -1], x1 - x0, z1 - z0),
    createFace([x0, y1, z0], [1, 0, 0], [0, 0, 1], x1 - x0, z1 - z0),
    createFace([x0, y0, z0], [1, 0, 0], [0, 1, 0], x1 - x0, y1 - y0),
  ]
}

const nearM = 0.3

/** Corners in order, clipped to what lies in front of the camera. */
function visibleCorners(face: Face): Vector[] {
  const { corner, across, up, width, height } = face
  const a = along(corner, across, width)
  const all = [corner, a, along(a, up, height), along(corner, up, height)]
  const out: Vector[] = []
  all.forEach((p, i) => {
    const q = all[(i + 1) % 4]
    if (p[2] >= nearM) out.push(p)
    if (p[2] >= nearM !== q[2] >= nearM) {
      const t = (nearM - p[2]) / (q[2] - p[2])
      out.push([p[0] + (q[0] - p[0]) * t, p[1] + (q[1] - p[1]) * t, nearM])
    }
  })
  return out
}

/** Moves corners outwards by about half a pixel, so that faces which share an edge leave no seam between them. */
function swollen(xs: readonly number[], ys: readonly number[]): [number[], number[]] {
  const cx = xs.reduce((a, b) => a + b, 0) / xs.length
  const cy = ys.reduce((a, b) => a + b, 0) / ys.length
  const outX = xs.map((x) => x + 0.5 * Math.sign(x - cx))
  const outY = ys.map((y) => y + 0.5 * Math.sign(y - cy))
  return [outX, outY]
}

/** Prepares a face for painting: `shade` sets the brush (and `spot.cover`) for every pixel that sees it. */
export function createFacePainter(
  camera: Camera,
  face: Face,
  brush: Brush,
  shade: (spot: Spot) => void,
): (band: Band) => void {
  const { corner, across, up, normal } = face
  const f = camera.focalPx
  const corners = visibleCorners(face)
  const [xs, ys] = swollen(
    corners.map((p) => camera.centreX + (f * p[0]) / p[2]),
    corners.map((p) => camera.horizonY - (f * (p[1] - camera.eyeM)) / p[2]),
  )
  const reach = dot(normal, [corner[0], corner[1] - camera.eyeM, corner[2]])
  if (corners.length < 3 || reach >= 0) return () => {}
  const startU = -dot(across, [corner[0], corner[1] - camera.eyeM, corner[2]])
  const startV = -dot(up, [corner[0], corner[1] - camera.eyeM, corner[2]])
  const spot: Spot = { u: 0, v: 0, x: 0, y: 0, z: 0, fpU: 0, fpV: 0, cover: 1 }
  const top = Math.min(...ys)
  const bottom = Math.max(...ys)
  return (band) => {
    if (bottom < band.y0 - 1 || top > band.y1 + 1) return
    drawPatch(band, xs, ys, brush, (px, py) => {
      const dx = (px - camera.centreX) / f
      const dy = (camera.horizonY - py) / f
      const slope = normal[0] * dx + normal[1] * dy + normal[2]
      const t = reach / slope
      const du = across[0] * dx + across[1] * dy + across[2]
      const dv = up[0] * dx + up[1] * dy + up[2]
      const k = t / f
      const sx = normal[0] / slope
      const sy = normal[1] / slope
      spot.u = startU + t * du
      spot.v = startV + t * dv
      spot.x = t * dx
      spot.y = camera.eyeM + t * dy
      spot.z = t
      spot.fpU = k * (Math.abs(across[0] - du * sx) + Math.abs(across[1] - du * sy))
      spot.fpV = k * (Math.abs(up[0] - dv * sx) + Math.abs(up[1] - dv * sy))
      spot.cover = 1
      shade(spot)
      return spot.cover
    })
  }
}
