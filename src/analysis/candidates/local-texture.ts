// How much brightness varies around each cell beyond what noise explains: leaves vary, paving and sky hardly do.
import type { CellGrid } from '../../frame/cell-grid.ts'
import type { NoiseModel } from '../../frame/frame.ts'
import { boxSums } from '../box-sums.ts'

/** Green photosites beside each red one, as in the common arrays. */
const greensPerRed = 2

type Cells = Pick<CellGrid, 'width' | 'height' | 'unsmoothed' | 'unclipped' | 'radius' | 'photosites'>

/** Deviation of log2 G in the smoothing box of every cell, in stops, less that of noise; 0 where nothing is known. */
export function localTexture(grid: Cells, noise: NoiseModel): Float32Array {
  const { width, height, unsmoothed, unclipped, radius, photosites } = grid
  const cells = width * height
  const green = new Float32Array(cells)
  const squares = new Float32Array(cells)
  const counted = new Float32Array(cells)
  for (let i = 0; i < cells; i++) {
    if (!unclipped[i]) continue
    green[i] = unsmoothed[i * 3 + 1]
    squares[i] = green[i] * green[i]
    counted[i] = 1
  }
  const [sums, sumsOfSquares, counts] = [green, squares, counted].map((plane) => boxSums(plane, width, height, radius))
  const { fullScaleElectrons: full, readNoiseElectrons: read } = noise
  const texture = new Float32Array(cells)
  for (let i = 0; i < cells; i++) {
    const mean = sums[i] / counts[i]
    if (!(mean > 0)) continue
    const variance = sumsOfSquares[i] / counts[i] - mean * mean
    const ofNoise = (mean * full + read * read) / (full * full * photosites * greensPerRed)
    texture[i] = Math.sqrt(Math.max(0, variance - ofNoise)) / (mean * Math.LN2)
  }
  return texture
}
