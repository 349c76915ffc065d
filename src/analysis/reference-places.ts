// A few places of a frame that stand for what is in it, so that a chain can show what it does to each: the colours and
// levels of evenly spread squares fall into groups, and the evenest square next to the middle of each group is taken.
import type { CellGrid } from '../frame/cell-grid.ts'

export interface ReferencePlace {
  readonly x: number
  readonly y: number
}

/** Squares along the longer side (the outermost are left out), and rounds of grouping: our choice. */
const squaresAcross = 40
const rounds = 8
/** Places of a frame that the chain tells of (our choice: as many as fit under a step). */
const shownPlaces = 5
/** Colour counts so many times more than level: a stop of brightness is a step, a stop of ratio is another material (our choice). */
const colourWeight = 2
/** Level in shares of saturation below which a colour is mostly noise (our choice). */
const darkest = 0.002

/** What is read of a grid of cells. */
type SquareCells = Pick<CellGrid, 'width' | 'height' | 'unsmoothed' | 'unclipped'>

interface Square extends ReferencePlace {
  /** log2 of the level, then of red and of blue to green. */
  readonly at: readonly [number, number, number]
  /** How far it is from its neighbours to the right and below. */
  readonly uneven: number
}

/** Squared distance of two colours in stops². */
function apart(a: readonly number[], b: readonly number[]): number {
  const [level, red, blue] = [a[0] - b[0], colourWeight * (a[1] - b[1]), colourWeight * (a[2] - b[2])]
  return level * level + red * red + blue * blue
}

/** The cells in the middle of evenly spread squares, where their colour counts and their neighbours' does. */
function squaresOf({ width, height, unsmoothed, unclipped }: SquareCells): Square[] {
  const side = Math.max(width, height) / squaresAcross
  const across = Math.max(1, Math.floor(width / side))
  const down = Math.max(1, Math.floor(height / side))
  const read = (i: number, j: number) => {
    const cell = Math.floor(((j + 0.5) / down) * height) * width + Math.floor(((i + 0.5) / across) * width)
    const [r, g, b] = unsmoothed.subarray(cell * 3, cell * 3 + 3)
    const usable = Math.min(r, g, b) > darkest && unclipped[cell] === 1
    return usable ? ([Math.log2((r + g + b) / 3), Math.log2(r / g), Math.log2(b / g)] as const) : null
  }
  const grid = Array.from({ length: across * down }, (_, n) => read(n % across, Math.floor(n / across)))
  const isEdge = (n: number) => n % across === 0 || (n + 1) % across === 0 || n < across || n >= grid.length - across
  return grid.flatMap((at, n) => {
    const right = (n + 1) % across === 0 ? at : grid[n + 1]
    const below = n + across < grid.length ? grid[n + across] : at
    if (!at || !right || !below || isEdge(n)) return []
    const uneven = Math.sqrt(apart(at, right)) + Math.sqrt(apart(at, below))
    return [{ x: ((n % across) + 0.5) / across, y: (Math.floor(n / across) + 0.5) / down, at, uneven }]
  })
}

const meanOf = (squares: readonly Square[]) =>
  [0, 1, 2].map((k) => squares.reduce((sum, { at }) => sum + at[k], 0) / squares.length)

/** The squares parted into groups around means that move until they settle; they start evenly along the level. */
function group(squares: readonly Square[], count: number): Square[][] {
  const byLevel = squares.toSorted((a, b) => a.at[0] - b.at[0])
  let means = Array.from({ length: count }, (_, k) => [...byLevel[Math.floor(((k + 0.5) / count) * byLevel.length)].at])
  let groups: Square[][] = []
  for (let round = 0; round < rounds; round++) {
    groups = means.map(() => [])
    for (const square of squares) {
      const distances = means.map((mean) => apart(square.at, mean))
      groups[distances.indexOf(Math.min(...distances))].push(square)
    }
    means = means.map((mean, k) => (groups[k].length ? meanOf(groups[k]) : mean))
  }
  return groups.filter((members) => members.length > 0)
}

/** At most `count` places, brightest first; fewer where the frame holds fewer usable squares, none where it holds none. */
export function referencePlaces(cells: SquareCells, count = shownPlaces): ReferencePlace[] {
  const squares = squaresOf(cells)
  return group(squares, Math.min(count, squares.length))
    .map((members) => {
      const mean = meanOf(members)
      const cost = (square: Square) => Math.sqrt(apart(square.at, mean)) + square.uneven
      return members.reduce((best, square) => (cost(square) < cost(best) ? square : best))
    })
    .sort((a, b) => b.at[0] - a.at[0])
    .map(({ x, y }) => ({ x, y }))
}
