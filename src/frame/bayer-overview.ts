// Sums of a Bayer mosaic for its overview. Within a cell red and blue lie one photosite apart, so plain sums of cells would edge
// every contour in colour; here the cells reach a quarter towards their neighbours, each colour away from its own corner,
// until all colours have the centre of the overview pixel as their own. Every photosite still counts once in all.
import type { MosaicData } from './frame.ts'
import type { Edges, RowSums } from './overview-rows.ts'
import type { PhotositeTable } from './photosite-table.ts'

/** Rows of cells that the means of colours are taken from; they only weigh detail, so a sample does (our choice). */
const sampledRows = 64
/** A colour's mean counts as at least this share of the brightest one's, so that noise is not taken for detail (our choice). */
const leastShare = 1 / 16

/** One row of cells by overview pixel; A B / C D are the photosites of a cell. */
interface CellRow {
  /** Four times the sums of codes that reach sideways, A to D. */
  readonly reaching: Int32Array
  /** Weighted sum of the codes of the pixel's own cells. */
  readonly level: Float64Array
  /** Largest normalised photosites of the upper and of the lower line, those reached for included. */
  readonly upper: Float64Array
  readonly lower: Float64Array
}

/** The larger of two codes without a branch, which noise would make unpredictable: twice as fast. */
function larger(a: number, b: number): number {
  const more = b - a
  return a + (more & ~(more >> 31))
}

/** Means of the four photosites of a cell over some rows, `cameraRgb` of their own colour, none far below the largest. */
function photositeMeans({ codes, width, height }: MosaicData, { black, scale }: PhotositeTable): number[] {
  const step = 2 * Math.max(1, Math.floor(height / 2 / sampledRows))
  const sums = [0, 0, 0, 0]
  let cells = 0
  for (let y = 0; y + 1 < height; y += step) {
    for (let x = 0, i = y * width; x + 1 < width; x += 2, i += 2, cells++) {
      sums[0] += codes[i]
      sums[1] += codes[i + 1]
      sums[2] += codes[i + width]
      sums[3] += codes[i + width + 1]
    }
  }
  const means = sums.map((sum, n) => (sum / cells - black[n]) * scale[n])
  const least = Math.max(...means) * leastShare
  return least > 0 ? means.map((mean) => Math.max(mean, least)) : [1, 1, 1, 1]
}

/** Returns a function that reads the row of cells at y; beyond the frame its outermost cells are repeated. */
function rowReader(
  { codes, width }: MosaicData,
  { black, scale }: PhotositeTable,
  columns: Edges,
  weights: readonly number[],
): (y: number, row: CellRow) => void {
  const end = columns.length - 2
  const [blackA, blackB, blackC, blackD] = black
  const [scaleA, scaleB, scaleC, scaleD] = scale
  const [weightA, weightB, weightC, weightD] = weights
  return (y, { reaching, level, upper, lower }) => {
    const line = y * width
    for (let place = 0, to = 0; place <= end; place++, to += 4) {
      const left = line + columns[place]
      const right = line + columns[place + 1]
      const before = place === 0 ? left + 1 : left - 1
      const after = place === end ? right - 2 : right
      const beyondA = codes[after]
      const beyondB = codes[before]
      const beyondC = codes[after + width]
      const beyondD = codes[before + width]
      let mostA = beyondA
      let mostB = beyondB
      let mostC = beyondC
      let mostD = beyondD
      let sumA = 0
      let sumB = 0
      let sumC = 0
      let sumD = 0
      for (let i = left; i < right; i += 2) {
        const a = codes[i]
        const b = codes[i + 1]
        const c = codes[i + width]
        const d = codes[i + width + 1]
        sumA = (sumA + a) | 0
        sumB = (sumB + b) | 0
        sumC = (sumC + c) | 0
        sumD = (sumD + d) | 0
        mostA = larger(mostA, a)
        mostB = larger(mostB, b)
        mostC = larger(mostC, c)
        mostD = larger(mostD, d)
      }
      reaching[to] = 4 * sumA + beyondA - codes[left]
      reaching[to + 1] = 4 * sumB + beyondB - codes[right - 1]
      reaching[to + 2] = 4 * sumC + beyondC - codes[left + width]
      reaching[to + 3] = 4 * sumD + beyondD - codes[right + width - 1]
      level[place] = weightA * sumA + weightB * sumB + weightC * sumC + weightD * sumD
      upper[place] = Math.max((mostA - blackA) * scaleA, (mostB - blackB) * scaleB)
      lower[place] = Math.max((mostC - blackC) * scaleC, (mostD - blackD) * scaleD)
    }
  }
}

function addRow(to: CellRow, { reaching, level, upper, lower }: CellRow): void {
  for (let i = 0; i < reaching.length; i++) to.reaching[i] += reaching[i]
  for (let i = 0; i < level.length; i++) {
    to.level[i] += level[i]
    to.upper[i] = Math.max(to.upper[i], upper[i])
    to.lower[i] = Math.max(to.lower[i], lower[i])
  }
}

/**
 * Returns a function that writes the sums of overview row `top`, to be called from top to bottom. `columns` and `rows` are
 * the edges of overview pixels, all even.
 */
export function bayerRowSummer(
  mosaic: MosaicData,
  table: PhotositeTable,
  columns: Edges,
  rows: Edges,
): (top: number, row: RowSums) => void {
  const across = columns.length - 1
  const means = photositeMeans(mosaic, table)
  // Detail is what the level of a pixel's own cells has beyond the reaching sums; it goes back in the frame's mean colour.
  const weights = means.map((mean, n) => table.scale[n] / (4 * mean))
  const read = rowReader(mosaic, table, columns, weights)
  const [colourA, colourB, colourC, colourD] = table.colours
  const [meanA, meanB, meanC, meanD] = means
  const [weightA, weightB, weightC, weightD] = weights.map((weight) => weight / 16)
  const [scaleA, scaleB, scaleC, scaleD] = table.scale.map((scale) => scale / 16)
  const [blackA, blackB, blackC, blackD] = table.black.map((black, n) => black * table.scale[n])

  const emptyRow = (): CellRow => ({
    reaching: new Int32Array(4 * across),
    level: new Float64Array(across),
    upper: new Float64Array(across),
    lower: new Float64Array(across),
  })
  const [none, several] = [emptyRow(), emptyRow()]
  none.upper.fill(-Infinity)
  none.lower.fill(-Infinity)
  // Enough rows of cells for one overview row and its neighbours above and below.
  const kept = Array.from({ length: (rows[1] - rows[0]) / 2 + 2 }, emptyRow)
  const end = rows[rows.length - 1]
  let unread = 0
  function cellRow(y: number): CellRow {
    for (; unread <= y; unread += 2) read(unread, kept[(unread / 2) % kept.length])
    return kept[(y / 2) % kept.length]
  }

  /** All rows of cells from `from` on in one; mostly there is none or one, which costs nothing. */
  function sumOf(from: number, to: number): CellRow {
    if (to - from <= 2) return to > from ? cellRow(from) : none
    several.reaching.fill(0)
    several.level.fill(0)
    several.upper.fill(-Infinity)
    several.lower.fill(-Infinity)
    for (let y = from; y < to; y += 2) addRow(several, cellRow(y))
    return several
  }

  return (top, { sums, largest }) => {
    const from = rows[top]
    const to = rows[top + 1]
    const above = cellRow(Math.max(from - 2, 0))
    const first = cellRow(from)
    const last = cellRow(to - 2)
    const below = cellRow(Math.min(to, end - 2))
    const rest = sumOf(from + 2, to)
    const [one, more] = [first.reaching, rest.reaching]
    const [over, outer, under] = [above.reaching, last.reaching, below.reaching]
    for (let place = 0, i = 0, at = 0; place < across; place++, i += 4, at += 3) {
      const cells = ((columns[place + 1] - columns[place]) * (to - from)) / 4
      const a = 3 * one[i] + 4 * more[i] + under[i]
      const b = 3 * one[i + 1] + 4 * more[i + 1] + under[i + 1]
      const c = 4 * (one[i + 2] + more[i + 2]) + over[i + 2] - outer[i + 2]
      const d = 4 * (one[i + 3] + more[i + 3]) + over[i + 3] - outer[i + 3]
      const level = first.level[place] + rest.level[place]
      const detail = level - weightA * a - weightB * b - weightC * c - weightD * d
      sums[at + colourA] += a * scaleA - cells * blackA + meanA * detail
      sums[at + colourB] += b * scaleB - cells * blackB + meanB * detail
      sums[at + colourC] += c * scaleC - cells * blackC + meanC * detail
      sums[at + colourD] += d * scaleD - cells * blackD + meanD * detail
      largest[place] = Math.max(
        Math.max(first.upper[place], rest.upper[place], below.upper[place]),
        Math.max(first.lower[place], rest.lower[place], above.lower[place]),
      )
    }
  }
}
