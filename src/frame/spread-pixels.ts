// Some pixels of a frame that stand for all: taken evenly from its overview.
import type { Overview } from './frame.ts'

/** About `count` pixels, six numbers each: `cameraRgb`, the largest raw channel, and x and y in 0…1 of the frame. */
export function spreadPixels({ rgba, width, height }: Overview, count: number): Float64Array {
  const step = Math.max(1, Math.sqrt((width * height) / count))
  const pixels: number[] = []
  for (let y = step / 2; y < height; y += step)
    for (let x = step / 2; x < width; x += step) {
      const [column, row] = [Math.floor(x), Math.floor(y)]
      const at = (row * width + column) * 4
      pixels.push(...rgba.subarray(at, at + 4), (column + 0.5) / width, (row + 0.5) / height)
    }
  return Float64Array.from(pixels)
}
