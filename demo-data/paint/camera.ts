// A level pinhole with vertical shift: uprights stay upright. World in metres: X right, Y up (0 = ground), Z away from the
// camera, which stands at (0, eyeM, 0). Picture in continuous pixels, y down; pixel (i, j) has its centre at i+.5, j+.5.
import type { Size } from './scene.ts'

export interface Camera {
  readonly focalPx: number
  readonly centreX: number
  readonly horizonY: number
  readonly eyeM: number
}

export interface View {
  /** Focal length in picture widths (.7 = wide, .85 = normal). */
  readonly focalWidths: number
  /** Height of the horizon, 0 = top edge, 1 = bottom edge. */
  readonly horizon: number
  readonly eyeM: number
}

export function createCamera(size: Size, view: View): Camera {
  return {
    focalPx: view.focalWidths * size.width,
    centreX: size.width / 2,
    horizonY: view.horizon * size.height,
    eyeM: view.eyeM,
  }
}

/** Column of a point at X, Z metres. */
export function columnOf(camera: Camera, x: number, z: number): number {
  return camera.centreX + (camera.focalPx * x) / z
}

/** Row of a point at height Y, distance Z metres. */
export function rowOf(camera: Camera, y: number, z: number): number {
  return camera.horizonY - (camera.focalPx * (y - camera.eyeM)) / z
}

/** Distance in metres at which a row below the horizon meets level ground of height `groundM`. */
export function groundDistance(camera: Camera, row: number, groundM = 0): number {
  return (camera.focalPx * (camera.eyeM - groundM)) / (row - camera.horizonY)
}

/** A direction towards the sun as a unit vector, from azimuth (0 = ahead, 90 = right, 180 = behind) and elevation. */
export function sunDirection(azimuthDeg: number, elevationDeg: number): readonly [number, number, number] {
  const a = (azimuthDeg * Math.PI) / 180
  const e = (elevationDeg * Math.PI) / 180
  return [Math.sin(a) * Math.cos(e), Math.sin(e), Math.cos(a) * Math.cos(e)]
}
