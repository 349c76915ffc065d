// Squares of colour and level in which cells are counted and what holds for them is kept: a plane over (colour along the step
// between both lights, level of red), both in stops.

/** Size of a bin in stops of colour and of level (tuned by simulation). */
const colourBin = 0.03
const levelBin = 0.15
/** Bins along each side, and the row of the level that counts as 0: 9 stops of colour, 24 of level, 7 of them above. */
export const columns = 300
export const rows = 160
const levelRow = 112

/** Places in bins: whole numbers are edges. */
const columnOf = (colour: number) => colour / colourBin + columns / 2
const rowOf = (level: number) => level / levelBin + levelRow
/** Colour and level in the middle of a bin. */
export const colourIn = (column: number) => (column + 0.5 - columns / 2) * colourBin
export const levelIn = (row: number) => (row + 0.5 - levelRow) * levelBin

/** Adds `weight` to the bin of a colour and level; returns what was added, 0 outside. */
export function addTo(bins: Float32Array, colour: number, level: number, weight: number): number {
  const [x, y] = [Math.floor(columnOf(colour)), Math.floor(rowOf(level))]
  if (!(x >= 0 && y >= 0 && x < columns && y < rows)) return 0
  bins[y * columns + x] += weight
  return weight
}

/** The value at a colour and level, linear between the middles of bins; 0 outside. */
export function readFrom(bins: Float32Array, colour: number, level: number): number {
  const [x, y] = [columnOf(colour) - 0.5, rowOf(level) - 0.5]
  const [left, top] = [Math.floor(x), Math.floor(y)]
  if (!(left >= 0 && top >= 0 && left < columns - 1 && top < rows - 1)) return 0
  const [fx, fy] = [x - left, y - top]
  const i = top * columns + left
  const above = bins[i] * (1 - fx) + bins[i + 1] * fx
  const below = bins[i + columns] * (1 - fx) + bins[i + columns + 1] * fx
  return above * (1 - fy) + below * fy
}
