// The whole cells of a disc on the sensor as `cameraRgb` means: what a neutral pick is made of. A cell with one clipped
// photosite is left out whole; dark photosites stay, because dropping them singly would bias the ratios.
import { clippingLevel } from './cell-grid.ts'
import { cellReader } from './cell-reader.ts'
import type { Cell } from './cell.ts'
import type { SensorData } from './frame.ts'

export interface SampledCells {
  /** Interleaved mean `cameraRgb` of each unclipped whole cell. */
  readonly rgb: Float64Array
  /** Unclipped cells, and all cells that were read. */
  readonly cells: number
  readonly allCells: number
  readonly cell: Cell
}

/** Most cells read: beyond that the spread of the material limits a pick, not their number; a larger disc reads every nth (our choice). */
export const mostSampledCells = 4096

/**
 * The cells whose centre lies within `radiusPx` sensor pixels of `centre` (0…1 of the upright frame), at least the one
 * under it and that alone where the disc is no wider than a cell. Parts of the disc outside the frame have no cells.
 */
export function readDisc(sensor: SensorData, centre: readonly [number, number], radiusPx: number): SampledCells {
  const { cell, across, down, read } = cellReader(sensor)
  const { size } = cell
  const held = (place: number, count: number) => Math.min(Math.max(place, 0), count - 1)
  // Centre and radius in cells; cell (i, j) has its centre there.
  const isOneCell = radiusPx <= size / 2
  const at = (place: number, count: number) => held(isOneCell ? Math.round(place) : place, count)
  const x = at((centre[0] * sensor.width) / size - 0.5, across)
  const y = at((centre[1] * sensor.height) / size - 0.5, down)
  const radius = isOneCell ? 0 : Math.max(radiusPx / size, Math.SQRT1_2)
  const top = held(Math.ceil(y - radius), down)
  const bottom = held(Math.floor(y + radius), down)

  // Every nth cell of the sensor, so that a moving disc keeps reading the same ones.
  const wanted = Math.ceil(Math.sqrt((Math.PI * radius * radius) / mostSampledCells))
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
