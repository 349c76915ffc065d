// The whole cells of a disc on the sensor as `cameraRgb` means: what a neutral pick is made of. A cell with one clipped
// photosite is left out whole; dark photosites stay, because dropping them singly would bias the ratios.
import { clippingLevel } from './cell-grid.ts'
import { type Cell, sensorCell } from './cell.ts'
import type { LinearData, MosaicData, SensorData } from './frame.ts'
import { photositeTable } from './photosite-table.ts'

export interface DiscCells {
  /** Interleaved mean `cameraRgb` of each unclipped whole cell. */
  readonly rgb: Float64Array
  /** Unclipped cells, and all cells that were read. */
  readonly cells: number
  readonly allCells: number
  readonly cell: Cell
}

/** Most cells read: beyond that the spread of the material limits a pick, not their number; a larger disc reads every nth (our choice). */
const mostCells = 4096

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

/**
 * The cells whose centre lies within `radiusPx` sensor pixels of `centre` (0…1 of the upright frame), at least the one
 * under it. Parts of the disc outside the frame have no cells.
 */
export function readDisc(sensor: SensorData, centre: readonly [number, number], radiusPx: number): DiscCells {
  const cell = sensorCell(sensor)
  const { size } = cell
  const read = sensor.kind === 'linear' ? linearReader(sensor) : mosaicReader(sensor, cell)
  const across = Math.floor(sensor.width / size)
  const down = Math.floor(sensor.height / size)
  const held = (place: number, count: number) => Math.min(Math.max(place, 0), count - 1)
  // Centre and radius in cells; cell (i, j) has its centre there.
  const x = held((centre[0] * sensor.width) / size - 0.5, across)
  const y = held((centre[1] * sensor.height) / size - 0.5, down)
  const radius = Math.max(radiusPx / size, Math.SQRT1_2)
  const top = held(Math.ceil(y - radius), down)
  const bottom = held(Math.floor(y + radius), down)

  // Every nth cell of the sensor, so that a moving disc keeps reading the same ones.
  const wanted = Math.ceil(Math.sqrt((Math.PI * radius * radius) / mostCells))
  const every = Math.max(1, Math.min(wanted, Math.floor(Math.min(across, down) / 8)))
  const next = (place: number) => (every === 1 ? place : Math.ceil(place / every) * every)

  const rgb = new Float64Array(3 * (Math.ceil((2 * radius + 1) / every) + 1) ** 2)
  let cells = 0
  let allCells = 0
  for (let j = next(top); j <= bottom; j += every) {
    const half = Math.sqrt(Math.max(radius * radius - (j - y) ** 2, 0))
    for (let i = next(held(Math.ceil(x - half), across)); i <= Math.min(x + half, across - 1); i += every) {
      if (read(i, j, rgb, cells * 3) < clippingLevel) cells++
      allCells++
    }
  }
  return { rgb: rgb.subarray(0, cells * 3), cells, allCells, cell }
}
