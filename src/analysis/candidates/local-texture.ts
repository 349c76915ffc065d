// How much brightness varies around each cell beyond what noise explains: leaves vary, paving and sky hardly do.
import type { CellGrid } from '../../frame/cell-grid.ts'
import type { NoiseModel } from '../../frame/frame.ts'

/** Green photosites beside each red one, as in the common arrays. */
const greensPerRed = 2

/** Running sums of `plane` over boxes of `2 · radius + 1` cells, cut at the borders. */
export function boxSums(plane: Float32Array, width: number, height: number, radius: number): Float32Array {
  const across = new Float32Array(plane.length)
  for (let y = 0; y < height; y++) {
    const row = y * width
    let sum = 0
    for (let x = 0; x < Math.min(radius, width); x++) sum += plane[row + x]
    for (let x = 0; x < width; x++) {
      if (x + radius < width) sum += plane[row + x + radius]
      if (x > radius) sum -= plane[row + x - radius - 1]
      across[row + x] = sum
    }
  }
  const sums = new Float32Array(plane.length)
  const column = new Float64Array(width)
  for (let y = 0; y < Math.min(radius, height); y++) for (let x = 0; x < width; x++) column[x] += across[y * width + x]
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      if (y + radius < height) column[x] += across[(y + radius) * width + x]
      if (y > radius) column[x] -= across[(y - radius - 1) * width + x]
      sums[y * width + x] = column[x]
    }
  }
  return sums
}

/** Deviation of log2 G in the smoothing box of every cell, in stops, less that of noise; 0 where nothing is known. */
export function localTexture(grid: CellGrid, noise: NoiseModel): Float32Array {
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
