// Sums of a Bayer mosaic for its overview. Within a cell red and blue lie one photosite apart, so plain sums of cells would edge
// every contour in colour; here the cells reach a quarter towards their neighbours, each colour away from its own corner,
// until all colours have the centre of the overview pixel as their own. Every photosite still counts once in all.
import type { MosaicData } from './frame.ts'
import type { Edges, RowSums } from './overview-rows.ts'
import type { PhotositeTable } from './photosite-table.ts'

/** Cells along each side of the frame that the means of colours are taken from; they only weigh detail, so a sample does (our choice). */
const sampledCells = 64
/** A colour's mean counts as at least this share of the brightest one's, so that noise is not taken for detail (our choice). */
const leastShare = 1 / 16

/** The larger of two codes without a branch, which noise would make unpredictable: twice as fast. */
function larger(a: number, b: number): number {
  const more = (b - a) | 0
  return (a + (more & ~(more >> 31))) | 0
}

/** The larger of two numbers without a branch; what it rounds is lost in single precision. */
const largerValue = (a: number, b: number): number => (a + b + Math.abs(a - b)) / 2

/** Means of the four photosites of a cell over the frame, `cameraRgb` of their own colour, none far below the largest. */
function photositeMeans({ codes, width, height }: MosaicData, { black, scale }: PhotositeTable): number[] {
  const across = 2 * Math.max(1, Math.floor(width / 2 / sampledCells))
  const down = 2 * Math.max(1, Math.floor(height / 2 / sampledCells))
  const sums = [0, 0, 0, 0]
  let cells = 0
  for (let y = 0; y + 1 < height; y += down) {
    for (let x = 0, i = y * width; x + 1 < width; x += across, i += across, cells++) {
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

/** Where lines begin in the codes: the first and the last of an overview row, and those beyond that it reaches for. */
interface Lines {
  readonly above: number
  readonly first: number
  readonly last: number
  readonly below: number
}

/**
 * Sums one overview row. A steps to the right and down for what it reaches, D to the left and up, and so on; so what is read in one
 * step are B and D of one cell and A and C of the next, which the edge of a pixel parts by 3 to 1. Lines go the same way.
 */
function sumRow(
  { codes, width }: MosaicData,
  { above, first, last, below }: Lines,
  columns: Edges,
  { colours, black, scale }: PhotositeTable,
  means: readonly number[],
  { sums, largest }: RowSums,
): void {
  const [colourA, colourB, colourC, colourD] = colours
  const [meanA, meanB, meanC, meanD] = means
  const [scaleA, scaleB, scaleC, scaleD] = scale
  const [blackA, blackB, blackC, blackD] = black
  const [weightA, weightB, weightC, weightD] = means.map((mean, n) => scale[n] / (64 * mean))
  const end = columns[columns.length - 1]
  const photositesDown = (last - first) / width + 1
  let [ownA, ownB, ownC, ownD] = [0, 0, 0, 0]
  let [reachA, reachB, reachC, reachD] = [0, 0, 0, 0]
  let [mostA, mostB, mostC, mostD] = [0, 0, 0, 0]
  let place = -1
  let right = 0
  for (let x = 0; x <= end; x += 2) {
    // Beyond the frame its outermost cells are repeated.
    const odd = x > 0 ? x - 1 : 1
    const even = x < end ? x : x - 2
    let a = codes[first + even]
    let b = codes[first + odd]
    let c = codes[last + even]
    let d = codes[last + odd]
    const beyondA = codes[below + even]
    const beyondB = codes[below + odd]
    const beyondC = codes[above + even]
    const beyondD = codes[above + odd]
    let columnA = beyondA - a
    let columnB = beyondB - b
    let columnC = beyondC - c
    let columnD = beyondD - d
    let topA = larger(beyondA, a)
    let topB = larger(beyondB, b)
    let topC = larger(beyondC, c)
    let topD = larger(beyondD, d)
    for (let line = first + width; line < last; line += 2 * width) {
      const nextA = codes[line + width + even]
      const nextB = codes[line + width + odd]
      const nextC = codes[line + even]
      const nextD = codes[line + odd]
      a = (a + nextA) | 0
      b = (b + nextB) | 0
      c = (c + nextC) | 0
      d = (d + nextD) | 0
      topA = larger(topA, nextA)
      topB = larger(topB, nextB)
      topC = larger(topC, nextC)
      topD = larger(topD, nextD)
    }
    columnA = (columnA + 4 * a) | 0
    columnB = (columnB + 4 * b) | 0
    columnC = (columnC + 4 * c) | 0
    columnD = (columnD + 4 * d) | 0
    ownB = (ownB + b) | 0
    ownD = (ownD + d) | 0
    mostA = larger(mostA, topA)
    mostB = larger(mostB, topB)
    mostC = larger(mostC, topC)
    mostD = larger(mostD, topD)
    if (x < right) {
      ownA = (ownA + a) | 0
      ownC = (ownC + c) | 0
      reachA = (reachA + 4 * columnA) | 0
      reachB = (reachB + 4 * columnB) | 0
      reachC = (reachC + 4 * columnC) | 0
      reachD = (reachD + 4 * columnD) | 0
      continue
    }
    if (place >= 0) {
      reachA = (reachA + columnA) | 0
      reachB = (reachB + 3 * columnB) | 0
      reachC = (reachC + columnC) | 0
      reachD = (reachD + 3 * columnD) | 0
      // What reaching costs in detail goes back in the frame's mean colour.
      const detail =
        weightA * (16 * ownA - reachA) +
        weightB * (16 * ownB - reachB) +
        weightC * (16 * ownC - reachC) +
        weightD * (16 * ownD - reachD)
      const cells = ((right - columns[place]) * photositesDown) / 4
      const at = 3 * place
      sums[at + colourA] += (reachA / 16 - cells * blackA) * scaleA + meanA * detail
      sums[at + colourB] += (reachB / 16 - cells * blackB) * scaleB + meanB * detail
      sums[at + colourC] += (reachC / 16 - cells * blackC) * scaleC + meanC * detail
      sums[at + colourD] += (reachD / 16 - cells * blackD) * scaleD + meanD * detail
      largest[place] = largerValue(
        largerValue((mostA - blackA) * scaleA, (mostB - blackB) * scaleB),
        largerValue((mostC - blackC) * scaleC, (mostD - blackD) * scaleD),
      )
    }
    place++
    right = columns[place + 1]
    ownA = a
    ownB = 0
    ownC = c
    ownD = 0
    reachA = (3 * columnA) | 0
    reachB = columnB
    reachC = (3 * columnC) | 0
    reachD = columnD
    mostA = topA
    mostB = topB
    mostC = topC
    mostD = topD
  }
}

/** Returns a function that writes the sums of overview row `top`. `columns` and `rows` are the edges of overview pixels, all even. */
export function bayerRowSummer(
  mosaic: MosaicData,
  table: PhotositeTable,
  columns: Edges,
  rows: Edges,
): (top: number, row: RowSums) => void {
  const { width } = mosaic
  const means = photositeMeans(mosaic, table)
  const lowest = rows[rows.length - 1] - 2
  return (top, row) => {
    const first = rows[top] * width
    const last = (rows[top + 1] - 1) * width
    const above = (Math.max(rows[top] - 2, 0) + 1) * width
    const below = Math.min(rows[top + 1], lowest) * width
    sumRow(mosaic, { above, first, last, below }, columns, table, means, row)
  }
}
