// Sums the rows of sensor data that make one overview row. Raw codes in, `cameraRgb` sums (RGB interleaved) and largest
// normalised photosites out. Every photosite passes here while a frame opens, hence the loop of its own for Bayer: it sums
// codes of whole cells and makes them `cameraRgb` once per overview pixel.
import type { LinearData, MosaicData } from './frame.ts'
import type { PhotositeTable } from './photosite-table.ts'

/** Sensor columns where overview pixels begin, and where the last one ends: whole cells only. */
export type Edges = Int32Array

export interface RowSums {
  readonly sums: Float64Array
  readonly largest: Float64Array
}

/** The larger of two codes without a branch, which noise would make unpredictable: twice as fast. */
function larger(a: number, b: number): number {
  const more = b - a
  return a + (more & ~(more >> 31))
}

/** Rows `from` to `to` (not included) of a mosaic in 2×2 cells; `from`, `to` and all edges are even. */
export function sumBayerRows(
  mosaic: MosaicData,
  table: PhotositeTable,
  from: number,
  to: number,
  edges: Edges,
  { sums, largest }: RowSums,
): void {
  const { codes, width } = mosaic
  const [colourA, colourB, colourC, colourD] = table.colours
  const [blackA, blackB, blackC, blackD] = table.black
  const [scaleA, scaleB, scaleC, scaleD] = table.scale
  for (let place = 0; place < edges.length - 1; place++) {
    const left = edges[place]
    const right = edges[place + 1]
    let sumA = 0
    let sumB = 0
    let sumC = 0
    let sumD = 0
    let mostA = 0
    let mostB = 0
    let mostC = 0
    let mostD = 0
    for (let y = from; y < to; y += 2) {
      const end = y * width + right
      for (let i = y * width + left; i < end; i += 2) {
        const a = codes[i]
        const b = codes[i + 1]
        const c = codes[i + width]
        const d = codes[i + width + 1]
        sumA += a
        sumB += b
        sumC += c
        sumD += d
        mostA = larger(mostA, a)
        mostB = larger(mostB, b)
        mostC = larger(mostC, c)
        mostD = larger(mostD, d)
      }
    }
    const cells = ((right - left) * (to - from)) / 4
    sums[place * 3 + colourA] += (sumA - cells * blackA) * scaleA
    sums[place * 3 + colourB] += (sumB - cells * blackB) * scaleB
    sums[place * 3 + colourC] += (sumC - cells * blackC) * scaleC
    sums[place * 3 + colourD] += (sumD - cells * blackD) * scaleD
    largest[place] = Math.max(
      (mostA - blackA) * scaleA,
      (mostB - blackB) * scaleB,
      (mostC - blackC) * scaleC,
      (mostD - blackD) * scaleD,
    )
  }
}

/** The same rows of a mosaic with any pattern. */
export function sumMosaicRows(
  { codes, width }: MosaicData,
  table: PhotositeTable,
  from: number,
  to: number,
  edges: Edges,
  { sums, largest }: RowSums,
): void {
  for (let y = from; y < to; y++) {
    const first = (y % table.rows) * table.columns
    for (let place = 0; place < edges.length - 1; place++) {
      for (let x = edges[place]; x < edges[place + 1]; x++) {
        const entry = first + (x % table.columns)
        const value = (codes[y * width + x] - table.black[entry]) * table.scale[entry]
        sums[place * 3 + table.colours[entry]] += value
        if (value > largest[place]) largest[place] = value
      }
    }
  }
}

/** The same rows of three-channel data. */
export function sumLinearRows(
  { codes, width, black, white }: LinearData,
  from: number,
  to: number,
  edges: Edges,
  { sums, largest }: RowSums,
): void {
  for (let channel = 0; channel < 3; channel++) {
    const scale = 1 / (white - black[channel])
    for (let place = 0; place < edges.length - 1; place++) {
      const left = edges[place]
      const right = edges[place + 1]
      let sum = 0
      let most = 0
      for (let y = from; y < to; y++) {
        for (let x = left, i = (y * width + left) * 3 + channel; x < right; x++, i += 3) {
          sum += codes[i]
          most = larger(most, codes[i])
        }
      }
      sums[place * 3 + channel] = (sum - (right - left) * (to - from) * black[channel]) * scale
      largest[place] = Math.max(largest[place], (most - black[channel]) * scale)
    }
  }
}
