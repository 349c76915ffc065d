// The reference engine: runs a pipeline description over pixels. `cameraRgb` with peak in, encoded `displayRgb` 0…1 out.
// It works in 64-bit float and defines what the GPU must draw.
import type { PipelineDescription } from './description.ts'
import { runStep } from './run-step.ts'

/** A rectangle of a frame in pixels of whatever size the frame is drawn at. */
export interface Region {
  /** Left and top edge within the frame. */
  readonly x: number
  readonly y: number
  readonly width: number
  readonly height: number
  readonly frameWidth: number
  readonly frameHeight: number
}

/**
 * Renders `rgba` (interleaved `cameraRgb` and largest raw channel, `region.width × region.height` pixels) to interleaved
 * RGB of the same size. Pixel centres lie at half coordinates. Throws a RangeError when the sizes disagree.
 */
export function renderOnCpu(description: PipelineDescription, rgba: Float32Array, region: Region): Float32Array {
  const { x, y, width, height, frameWidth, frameHeight } = region
  if (rgba.length !== width * height * 4) {
    throw new RangeError(
      `Cannot render: ${width} × ${height} pixels need ${width * height * 4} numbers, not ${rgba.length}.`,
    )
  }
  const rgb = new Float32Array(width * height * 3)
  const pixel = new Float64Array(6)
  for (let row = 0, from = 0, to = 0; row < height; row++) {
    for (let column = 0; column < width; column++, from += 4, to += 3) {
      pixel[0] = rgba[from]
      pixel[1] = rgba[from + 1]
      pixel[2] = rgba[from + 2]
      pixel[3] = rgba[from + 3]
      pixel[4] = (x + column + 0.5) / frameWidth
      pixel[5] = (y + row + 0.5) / frameHeight
      for (const step of description.steps) runStep(step, pixel)
      rgb[to] = pixel[0]
      rgb[to + 1] = pixel[1]
      rgb[to + 2] = pixel[2]
    }
  }
  return rgb
}
