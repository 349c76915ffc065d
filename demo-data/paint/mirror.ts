// What still water would mirror: the world painted from as far below the water as the eye is above it, at reduced size.
// Columns are stored as running sums, so that the mean over any stretch of a column costs two look-ups: rough water smears
// its mirror image upwards and downwards, never sideways.
import { type Camera } from './camera.ts'
import { type Band, createBand } from './canvas.ts'
import type { Size } from './scene.ts'
import { strokeStride, type Strokes } from './strokes.ts'

export interface Mirror {
  readonly camera: Camera
  /** Mean colour around slopes `across` and `up`, over ± `smear` (a slope) in height, into out[0…2]. */
  colour(across: number, up: number, smear: number, out: Float64Array): void
}

/** A camera for the mirror picture of a frame seen by `camera`, and the size of that picture, `width` pixels wide. */
export function mirrorView(camera: Camera, size: Size, width: number): { camera: Camera; size: Size } {
  const scale = width / size.width
  const below = (size.height - camera.horizonY) * scale
  const height = Math.ceil(below * 1.12)
  return {
    size: { width, height },
    camera: { focalPx: camera.focalPx * scale, centreX: width / 2, horizonY: height, eyeM: -camera.eyeM },
  }
}

/**
 * Strokes placed for `camera` moved to where the mirror picture shows them: cheaper than placing and sorting them again.
 * Good for what stands so far off that both eyes see it from the same side.
 */
export function mirrorStrokes(strokes: Strokes, camera: Camera, view: Camera): Strokes {
  const scale = view.focalPx / camera.focalPx
  const data = strokes.data.slice(0, strokes.count * strokeStride)
  for (let at = 0; at < data.length; at += strokeStride) {
    const shift = view.horizonY - scale * camera.horizonY - (2 * view.focalPx * camera.eyeM) / data[at]
    data[at + 1] = (data[at + 1] - camera.centreX) * scale + view.centreX
    data[at + 2] = data[at + 2] * scale + shift
    data[at + 3] = (data[at + 3] - camera.centreX) * scale + view.centreX
    data[at + 4] = data[at + 4] * scale + shift
    data[at + 5] *= scale
    data[at + 6] *= scale
  }
  return { ...strokes, data }
}

/** Paints the mirror picture with `paint` and prepares it for look-ups. */
export function createMirror(view: { camera: Camera; size: Size }, paint: (band: Band) => void): Mirror {
  const { camera, size } = view
  const band = createBand(size.width, size.height, 0, size.height)
  paint(band)
  const { width, height } = size
  const planes = [band.r, band.g, band.b]
  for (const plane of planes) for (let i = width; i < plane.length; i++) plane[i] += plane[i - width]
  const sumTo = (plane: Float32Array, column: number, row: number): number => {
    const j = Math.floor(row)
    const v = row - j
    const above = j > 0 ? plane[(j - 1) * width + column] : 0
    const here = plane[Math.min(height - 1, j) * width + column]
    return above + (here - above) * v
  }
  return {
    camera,
    colour(across, up, smear, out) {
      const gx = Math.min(width - 1.001, Math.max(0, camera.centreX + across * camera.focalPx - 0.5))
      const i = Math.floor(gx)
      const u = gx - i
      const middle = height - up * camera.focalPx
      const half = Math.max(0.5, smear * camera.focalPx)
      const top = Math.min(height - 1, Math.max(0, middle - half))
      const bottom = Math.min(height, Math.max(top + 1, middle + half))
      for (let c = 0; c < 3; c++) {
        const left = sumTo(planes[c], i, bottom) - sumTo(planes[c], i, top)
        const right = sumTo(planes[c], i + 1, bottom) - sumTo(planes[c], i + 1, top)
        out[c] = (left + (right - left) * u) / (bottom - top)
      }
    },
  }
}
