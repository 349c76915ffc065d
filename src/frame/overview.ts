// The overview: a frame averaged down to about two megapixels of `cameraRgb` at unity gain, alpha the largest normalised
// photosite that went into each. Whole cells are averaged, so it needs no demosaicing and shows clipping everywhere downstream.
import { bayerRowSummer } from './bayer-overview.ts'
import { sensorCell } from './cell.ts'
import type { Overview, SensorData } from './frame.ts'
import { type Edges, type RowSums, sumLinearRows, sumMosaicRows } from './overview-rows.ts'
import { photositeTable } from './photosite-table.ts'

/** Largest overview in pixels: with whole cells it keeps overviews between 0.8 and 3.2 megapixels (our choice). */
const largestPixels = 3.2e6

/** Sensor pixels per overview pixel: whole cells, as few as keep the overview small. */
function overviewScale(width: number, height: number, cell: number): number {
  let scale = cell
  while (Math.ceil(width / scale) * Math.ceil(height / scale) > largestPixels) scale += cell
  return scale
}

/** Where overview pixels begin along an axis, and where the last whole cell ends. A remnant below one cell has no pixel here. */
function edgesAlong(length: number, cell: number, scale: number): Int32Array {
  const end = Math.floor(length / cell) * cell
  return Int32Array.from({ length: Math.ceil(end / scale) + 1 }, (_, i) => Math.min(i * scale, end))
}

/** Writes the sums of overview row `top`. */
type SumRow = (top: number, row: RowSums) => void

/** The loop over rows that fits the sensor. */
function rowSummer(sensor: SensorData, cellSize: number, columns: Edges, rows: Edges): SumRow {
  if (sensor.kind === 'linear') return (top, row) => sumLinearRows(sensor, rows[top], rows[top + 1], columns, row)
  const table = photositeTable(sensor)
  if (cellSize === 2 && table.columns === 2 && table.rows === 2) return bayerRowSummer(sensor, table, columns, rows)
  return (top, row) => sumMosaicRows(sensor, table, rows[top], rows[top + 1], columns, row)
}

/** Writes a row of overview pixels from its sums: each is divided by the photosites of its colour, so many `counts` to a cell. */
function writeRow(
  pixels: Float32Array,
  { sums, largest }: RowSums,
  [red, green, blue]: readonly number[],
  cellsDown: number,
  cellsAcross: Float64Array,
): void {
  // One channel stands for all three.
  const redAt = red ? 0 : 1
  const blueAt = red ? 2 : 1
  const redShare = 1 / (cellsDown * (red || green))
  const greenShare = 1 / (cellsDown * green)
  const blueShare = 1 / (cellsDown * (blue || green))
  for (let place = 0, at = 0, to = 0; place < largest.length; place++, at += 3, to += 4) {
    const share = 1 / cellsAcross[place]
    pixels[to] = sums[at + redAt] * redShare * share
    pixels[to + 1] = sums[at + 1] * greenShare * share
    pixels[to + 2] = sums[at + blueAt] * blueShare * share
    pixels[to + 3] = largest[place]
  }
  // A remnant below one cell repeats its neighbour.
  if (largest.length * 4 < pixels.length) pixels.copyWithin(pixels.length - 4, pixels.length - 8, pixels.length - 4)
}

/**
 * Makes the overview of upright sensor data. Overview pixel i spans sensor pixels i·scale … (i+1)·scale; the last one may
 * reach beyond the frame and then averages the whole cells inside it, or repeats its neighbour where there is none. Pixels of
 * Bayer mosaics also draw on the photosites that border on theirs.
 * One-channel sensors give three equal channels.
 */
export function makeOverview(sensor: SensorData): Overview {
  const cell = sensorCell(sensor)
  const scale = overviewScale(sensor.width, sensor.height, cell.size)
  const width = Math.ceil(sensor.width / scale)
  const height = Math.ceil(sensor.height / scale)
  const columns = edgesAlong(sensor.width, cell.size, scale)
  const rows = edgesAlong(sensor.height, cell.size, scale)
  const across = columns.length - 1
  const down = rows.length - 1
  const cellsAcross = Float64Array.from({ length: across }, (_, i) => (columns[i + 1] - columns[i]) / cell.size)
  const sumRow = rowSummer(sensor, cell.size, columns, rows)
  const rgba = new Float32Array(width * height * 4)
  const row = { sums: new Float64Array(across * 3), largest: new Float64Array(across) }
  for (let top = 0; top < down; top++) {
    row.sums.fill(0)
    row.largest.fill(-Infinity)
    sumRow(top, row)
    const pixels = rgba.subarray(top * width * 4, (top + 1) * width * 4)
    writeRow(pixels, row, cell.counts, (rows[top + 1] - rows[top]) / cell.size, cellsAcross)
  }
  if (down < height) rgba.copyWithin(down * width * 4, (down - 1) * width * 4, down * width * 4)
  return { width, height, rgba, scale }
}
