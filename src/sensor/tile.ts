// A tile of a mosaic as normalised photosites with an apron on all sides, so that tiles are demosaiced one by one and meet
// without seams.
import type { MosaicData } from '../frame/frame.ts'
import { photositeTable } from '../frame/photosite-table.ts'
import { liesWithin, type Rectangle } from './rectangle.ts'

export interface NormalisedTile {
  /** Normalised photosites (ungained `cameraRgb` of one colour each), `width` per row, apron included. */
  readonly values: Float32Array
  readonly width: number
  readonly height: number
  readonly apron: number
}

/**
 * The index inside 0…length − 1 that stands for one outside it. With a period of 2 or 1 it is mirrored about the border
 * photosite, else shifted by whole periods: either way the colour stays the same.
 */
function standIn(index: number, length: number, period: number): number {
  if (index >= 0 && index < length) return index
  if (period <= 2) {
    const mirrored = index < 0 ? -index : 2 * (length - 1) - index
    return Math.min(Math.max(mirrored, 0), length - 1)
  }
  const periods = Math.ceil((index < 0 ? -index : index - length + 1) / period)
  return Math.min(Math.max(index + (index < 0 ? periods : -periods) * period, 0), length - 1)
}

/** The tile `area` of a mosaic, apron included. Throws a RangeError where it leaves the frame. */
export function normaliseTile(mosaic: MosaicData, area: Rectangle, apron: number): NormalisedTile {
  if (!liesWithin(area, mosaic.width, mosaic.height)) throw new RangeError('A tile must lie within the frame.')
  const { columns, rows, black, scale } = photositeTable(mosaic)
  const width = area.width + 2 * apron
  const height = area.height + 2 * apron
  const values = new Float32Array(width * height)
  const sources = Int32Array.from({ length: width }, (_, x) =>
    standIn(area.x + x - apron, mosaic.width, mosaic.cfa.columns),
  )
  for (let y = 0, to = 0; y < height; y++) {
    const row = standIn(area.y + y - apron, mosaic.height, mosaic.cfa.rows)
    const first = (row % rows) * columns
    for (let x = 0; x < width; x++, to++) {
      const entry = first + (sources[x] % columns)
      values[to] = (mosaic.codes[row * mosaic.width + sources[x]] - black[entry]) * scale[entry]
    }
  }
  return { values, width, height, apron }
}

/** Writes the largest of the 3×3 photosites about each pixel into the alpha of `rgba`: interpolation spreads clipping that far. */
export function writePeaks({ values, width, height, apron }: NormalisedTile, rgba: Float32Array): void {
  for (let y = apron, to = 3; y < height - apron; y++) {
    for (let i = y * width + apron, end = (y + 1) * width - apron; i < end; i++, to += 4) {
      let peak = values[i]
      for (let row = i - width; row <= i + width; row += width) {
        peak = Math.max(peak, values[row - 1], values[row], values[row + 1])
      }
      rgba[to] = peak
    }
  }
}
