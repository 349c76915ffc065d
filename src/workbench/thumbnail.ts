// A small finished picture of a frame for lists, made by the reference engine from an area average of the overview.
import type { Overview } from '../frame/frame.ts'
import type { PipelineDescription } from '../pipeline/description.ts'
import { renderOnCpu } from '../pipeline/render-on-cpu.ts'

/** Longer side in pixels: sharp at the size of a list on a dense screen, and cheap enough for the interface thread. */
const longSidePx = 240

/** Area average by whole overview pixels; alpha keeps the largest level, so that clipping survives. */
export function shrink(overview: Overview, longSide: number): { width: number; height: number; rgba: Float32Array } {
  const factor = Math.max(1, Math.floor(Math.max(overview.width, overview.height) / longSide))
  const width = Math.floor(overview.width / factor)
  const height = Math.floor(overview.height / factor)
  const rgba = new Float32Array(width * height * 4)
  for (let y = 0; y < height * factor; y++) {
    const row = Math.floor(y / factor) * width
    for (let x = 0; x < width * factor; x++) {
      const from = (y * overview.width + x) * 4
      const to = (row + Math.floor(x / factor)) * 4
      for (let channel = 0; channel < 3; channel++) {
        rgba[to + channel] += overview.rgba[from + channel] / (factor * factor)
      }
      rgba[to + 3] = Math.max(rgba[to + 3], overview.rgba[from + 3])
    }
  }
  return { width, height, rgba }
}

/** Object URL of a JPEG of the finished picture; the caller revokes it. `description` must end in sRGB. */
export async function thumbnailUrl(overview: Overview, description: PipelineDescription): Promise<string> {
  const { width, height, rgba } = shrink(overview, longSidePx)
  const rgb = renderOnCpu(description, rgba, { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height })
  const image = new ImageData(width, height)
  for (let i = 0; i < width * height; i++) {
    for (let channel = 0; channel < 3; channel++) image.data[i * 4 + channel] = Math.round(rgb[i * 3 + channel] * 255)
    image.data[i * 4 + 3] = 255
  }
  const canvas = new OffscreenCanvas(width, height)
  canvas.getContext('2d')!.putImageData(image, 0, 0)
  return URL.createObjectURL(await canvas.convertToBlob({ type: 'image/jpeg', quality: 0.9 }))
}
