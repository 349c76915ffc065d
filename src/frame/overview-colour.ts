// What the overview holds at a place: `cameraRgb` at unity gain and the largest normalised photosite, as a chain takes it in.
import type { Overview } from './frame.ts'

export type CameraColour = readonly [red: number, green: number, blue: number, peak: number]

/**
 * Mean colour of the overview pixels at most `radius` pixels beside the one at (`x`, `y`), 0…1 of the frame, and their
 * largest peak.
 */
export function overviewColour({ width, height, rgba }: Overview, x: number, y: number, radius = 0): CameraColour {
  const column = Math.min(Math.max(Math.floor(x * width), 0), width - 1)
  const row = Math.min(Math.max(Math.floor(y * height), 0), height - 1)
  const sum = [0, 0, 0]
  let peak = -Infinity
  let pixels = 0
  for (let j = Math.max(row - radius, 0); j <= Math.min(row + radius, height - 1); j++) {
    for (let i = Math.max(column - radius, 0); i <= Math.min(column + radius, width - 1); i++, pixels++) {
      const at = (j * width + i) * 4
      for (let c = 0; c < 3; c++) sum[c] += rgba[at + c]
      peak = Math.max(peak, rgba[at + 3])
    }
  }
  return [sum[0] / pixels, sum[1] / pixels, sum[2] / pixels, peak]
}

/** Evenly spread pixels of the overview, at most `longSide` along its longer side, as a small overview of its own. */
export function spreadPixels({ width, height, rgba }: Overview, longSide: number) {
  const step = Math.max(1, Math.ceil(Math.max(width, height) / longSide))
  const across = Math.max(1, Math.floor(width / step))
  const down = Math.max(1, Math.floor(height / step))
  const spread = new Float32Array(across * down * 4)
  for (let j = 0, to = 0; j < down; j++) {
    for (let i = 0; i < across; i++, to += 4) {
      const from =
        (Math.min(j * step + (step >> 1), height - 1) * width + Math.min(i * step + (step >> 1), width - 1)) * 4
      spread.set(rgba.subarray(from, from + 4), to)
    }
  }
  return { width: across, height: down, rgba: spread }
}
