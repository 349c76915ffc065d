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
  const [red, green, blue] = cell.counts
  // One channel stands for all three.
  const [redAt, blueAt] = red ? [0, 2] : [1, 1]
  const shares = Float64Array.from({ length: across }, (_, i) => cell.size / (columns[i + 1] - columns[i]))

  const sumRow = rowSummer(sensor, cell.size, columns, rows)

  const rgba = new Float32Array(width * height * 4)
  const row = { sums: new Float64Array(across * 3), largest: new Float64Array(across) }
  const { sums, largest } = row
  for (let top = 0; top < down; top++) {
    sums.fill(0)
    largest.fill(-Infinity)
    sumRow(top, row)
    const share = cell.size / (rows[top + 1] - rows[top])
    const redShare = share / (red || green)
    const greenShare = share / green
    const blueShare = share / (blue || green)
    for (let left = 0, at = 0, to = top * width * 4; left < across; left++, at += 3, to += 4) {
      rgba[to] = sums[at + redAt] * redShare * shares[left]
      rgba[to + 1] = sums[at + 1] * greenShare * shares[left]
      rgba[to + 2] = sums[at + blueAt] * blueShare * shares[left]
      rgba[to + 3] = largest[left]
    }
    const end = (top + 1) * width * 4
    if (across < width) rgba.copyWithin(end - 4, end - 8, end - 4)
  }
  if (down < height) rgba.copyWithin(down * width * 4, (down - 1) * width * 4, down * width * 4)
  return { width, height, rgba, scale }
}
