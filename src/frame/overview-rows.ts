// Sums the rows of sensor data that make one overview row, whole cells as they lie. Raw codes in, `cameraRgb` sums (RGB
// interleaved) and largest normalised photosites out. Bayer mosaics have sums of their own, see `bayer-overview.ts`.
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

/** Rows `from` to `to` (not included) of a mosaic with any pattern. */
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
