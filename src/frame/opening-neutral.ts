// The neutral a frame opens with: the plain mean of log2 R/G and log2 B/G over smoothed unclipped cells. A mean of logs
// leaves no net colour, so the first view behind a long-pass filter is never all red.
import type { CellGrid } from './cell-grid.ts'

/** Least share of valid cells that may speak for the frame (our choice). */
const leastShare = 0.02

/**
 * (log2 R/G, log2 B/G) of the frame. Where nearly everything is clipped or dark, the ratio of the means
 * `meanCameraRgb` instead, and (0, 0) where even these are not positive.
 */
export function findOpeningNeutral(grid: CellGrid, meanCameraRgb: readonly number[]): [number, number] {
  const { rgb, valid } = grid
  let u = 0
  let v = 0
  let cells = 0
  for (let cell = 0; cell < valid.length; cell++) {
    if (!valid[cell]) continue
    const green = Math.log2(rgb[cell * 3 + 1])
    u += Math.log2(rgb[cell * 3]) - green
    v += Math.log2(rgb[cell * 3 + 2]) - green
    cells++
  }
  if (cells > leastShare * valid.length) return [u / cells, v / cells]
  const [red, green, blue] = meanCameraRgb
  return Math.min(red, green, blue) > 0 ? [Math.log2(red / green), Math.log2(blue / green)] : [0, 0]
}
