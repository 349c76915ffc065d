// Sums over the square around every cell of a plane, each found from its neighbour's, so that the size does not matter.

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
