// A small finished picture of a frame for lists, made by the reference engine from a reduced overview, a few rows at a
// time: the interface thread is never held up.
import type { Overview } from '../frame/frame.ts'
import type { PipelineDescription } from '../pipeline/description.ts'
import { renderOnCpu } from '../pipeline/render-on-cpu.ts'

/** Longer side in pixels: sharp at the size of a list on a dense screen, and cheap. */
const longSidePx = 240
/** Overview pixels averaged along each axis: enough against moiré, few enough to be quick. */
const taps = 3
/** Rows rendered before others get their turn: some 4 ms of work. */
const rowsPerTurn = 16

interface Reduced {
  readonly width: number
  readonly height: number
  /** Rows `top` … `top + rows − 1` as `cameraRgb` and largest level. */
  rows(top: number, rows: number): Float32Array
}

/** The overview at about `longSide` pixels: evenly spread taps in each of its areas, alpha the largest of them. */
function reduce(overview: Overview, longSide: number): Reduced {
  const factor = Math.max(1, Math.floor(Math.max(overview.width, overview.height) / longSide))
  const width = Math.floor(overview.width / factor)
  const height = Math.floor(overview.height / factor)
  const step = Math.min(taps, factor)
  const offsets = Array.from({ length: step }, (_, tap) => Math.floor(((tap + 0.5) * factor) / step))

  function pixel(x: number, y: number, rgba: Float32Array, to: number): void {
    for (const down of offsets) {
      for (const across of offsets) {
        const from = ((y * factor + down) * overview.width + x * factor + across) * 4
        for (let channel = 0; channel < 3; channel++)
          rgba[to + channel] += overview.rgba[from + channel] / offsets.length ** 2
        rgba[to + 3] = Math.max(rgba[to + 3], overview.rgba[from + 3])
      }
    }
  }
  return {
    width,
    height,
    rows(top, rows) {
      const rgba = new Float32Array(width * rows * 4)
      for (let i = 0; i < width * rows; i++) pixel(i % width, top + Math.floor(i / width), rgba, i * 4)
      return rgba
    },
  }
}

/** Object URL of a JPEG of the finished picture; the caller revokes it. `description` must end in sRGB. */
export async function thumbnailUrl(overview: Overview, description: PipelineDescription): Promise<string> {
  const { width, height, rows } = reduce(overview, longSidePx)
  const image = new ImageData(width, height)
  for (let top = 0; top < height; top += rowsPerTurn) {
    const count = Math.min(rowsPerTurn, height - top)
    const region = { x: 0, y: top, width, height: count, frameWidth: width, frameHeight: height }
    const rgb = renderOnCpu(description, rows(top, count), region)
    for (let i = 0, to = top * width * 4; i < rgb.length; i += 3, to += 4) {
      for (let channel = 0; channel < 3; channel++) image.data[to + channel] = Math.round(rgb[i + channel] * 255)
      image.data[to + 3] = 255
    }
    await new Promise((resolve) => setTimeout(resolve))
  }
  const canvas = new OffscreenCanvas(width, height)
  canvas.getContext('2d')!.putImageData(image, 0, 0)
  return URL.createObjectURL(await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 }))
}
