// Reads single whole cells of a sensor as `cameraRgb` means, whatever the pattern: what every sample is put together from.
import { type Cell, sensorCell } from './cell.ts'
import type { LinearData, MosaicData, SensorData } from './frame.ts'
import { photositeTable } from './photosite-table.ts'

/** Reads the cell in column i, row j of the cells into `rgb` at `to`; its largest normalised photosite comes back. */
type ReadCell = (i: number, j: number, rgb: Float64Array, to: number) => number

function mosaicReader(mosaic: MosaicData, { size, counts }: Cell): ReadCell {
  const { codes, width } = mosaic
  const { columns, rows, colours, black, scale } = photositeTable(mosaic)
  // Cells repeat after so many; each kind of cell has its own order of photosites.
  const across = columns % size ? columns : columns / size
  const down = rows % size ? rows : rows / size
  const kinds = Array.from({ length: across * down }, (_, kind) => {
    const left = (kind % across) * size
    const top = Math.floor(kind / across) * size
    return Array.from({ length: size * size }, (_, n) => {
      const x = n % size
      const y = Math.floor(n / size)
      const entry = ((top + y) % rows) * columns + ((left + x) % columns)
      return { offset: y * width + x, colour: colours[entry], black: black[entry], scale: scale[entry] }
    })
  })
  return (i, j, rgb, to) => {
    const start = j * size * width + i * size
    let largest = -Infinity
    rgb[to] = rgb[to + 1] = rgb[to + 2] = 0
    for (const { offset, colour, black, scale } of kinds[(j % down) * across + (i % across)]) {
      const value = (codes[start + offset] - black) * scale
      rgb[to + colour] += value
      if (value > largest) largest = value
    }
    rgb[to + 1] /= counts[1]
    rgb[to] = counts[0] ? rgb[to] / counts[0] : rgb[to + 1]
    rgb[to + 2] = counts[2] ? rgb[to + 2] / counts[2] : rgb[to + 1]
    return largest
  }
}

function linearReader({ codes, width, black, white }: LinearData): ReadCell {
  return (i, j, rgb, to) => {
    const from = (j * width + i) * 3
    for (let c = 0; c < 3; c++) rgb[to + c] = (codes[from + c] - black[c]) / (white - black[c])
    return Math.max(rgb[to], rgb[to + 1], rgb[to + 2])
  }
}

export interface CellReader {
  readonly cell: Cell
  /** Whole cells in x and y. */
  readonly across: number
  readonly down: number
  readonly read: ReadCell
}

export function cellReader(sensor: SensorData): CellReader {
  const cell = sensorCell(sensor)
  return {
    cell,
    across: Math.floor(sensor.width / cell.size),
    down: Math.floor(sensor.height / cell.size),
    read: sensor.kind === 'linear' ? linearReader(sensor) : mosaicReader(sensor, cell),
  }
}
