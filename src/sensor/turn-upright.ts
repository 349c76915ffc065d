// Cuts the visible area out of stored sensor data and turns it upright, codes together with the patterns that belong to
// them. Done once when a frame opens, so that nothing downstream asks about orientation.
import type { CfaColour, LinearData, MosaicData } from '../frame/frame.ts'
import { entryAt, makeTable, moveOrigin, type RepeatingTable, shrinkTable } from './cfa.ts'
import { type Orientation, storedPlace, swapsSides } from './orientation.ts'
import type { Rectangle } from './rectangle.ts'

/** Codes as stored: row-major, `samples` interleaved values per pixel, `stride` pixels per row. */
interface StoredCodes {
  readonly codes: Uint16Array
  readonly stride: number
  readonly samples: 1 | 3
}

/** What a stored mosaic is; patterns relative to the origin of the stored codes. */
export interface StoredMosaic extends StoredCodes {
  readonly colours: RepeatingTable<CfaColour>
  readonly black: RepeatingTable<number>
  readonly white: number
}

export interface StoredLinear extends StoredCodes {
  readonly black: readonly [number, number, number]
  readonly white: number
}

/** Side of the squares that quarter turns go through, so that both pictures stay within reach of the processor's cache. */
const block = 64

/** The codes of `area`, upright: where nothing turns, moved together in the memory of the stored ones, since fresh memory costs more. */
function turnCodes({ codes, stride, samples }: StoredCodes, area: Rectangle, orientation: Orientation): Uint16Array {
  const { width, height } = area
  if (orientation === 1) {
    const length = width * samples
    const begin = (y: number) => ((area.y + y) * stride + area.x) * samples
    if (width === stride) return codes.subarray(begin(0), begin(height))
    for (let y = 0; y < height; y++) codes.copyWithin(y * length, begin(y), begin(y) + length)
    return codes.subarray(0, height * length)
  }
  const upright = new Uint16Array(width * height * samples)
  const place = (x: number, y: number) => {
    const [column, row] = storedPlace(orientation, x, y, width, height)
    return ((area.y + row) * stride + area.x + column) * samples
  }
  const [across, down] = swapsSides(orientation) ? [height, width] : [width, height]
  const origin = place(0, 0)
  const right = place(1, 0) - origin
  const below = place(0, 1) - origin
  for (let blockTop = 0; blockTop < down; blockTop += block) {
    const bottom = Math.min(blockTop + block, down)
    for (let blockLeft = 0; blockLeft < across; blockLeft += block) {
      const end = Math.min(blockLeft + block, across)
      for (let sample = 0; sample < samples; sample++) {
        for (let y = blockTop; y < bottom; y++) {
          let from = origin + y * below + blockLeft * right + sample
          let to = (y * across + blockLeft) * samples + sample
          for (let x = blockLeft; x < end; x++, from += right, to += samples) upright[to] = codes[from]
        }
      }
    }
  }
  return upright
}

function turnTable<T>(table: RepeatingTable<T>, area: Rectangle, orientation: Orientation): RepeatingTable<T> {
  const local = moveOrigin(table, area.x, area.y)
  const [columns, rows] = swapsSides(orientation) ? [table.rows, table.columns] : [table.columns, table.rows]
  return shrinkTable(
    makeTable(columns, rows, (x, y) => entryAt(local, ...storedPlace(orientation, x, y, area.width, area.height))),
  )
}

const uprightSize = ({ width, height }: Rectangle, orientation: Orientation) =>
  swapsSides(orientation) ? { width: height, height: width } : { width, height }

/** The visible `area` of a stored mosaic as upright sensor data; takes the stored codes over, which mean nothing afterwards. */
export function uprightMosaic(stored: StoredMosaic, area: Rectangle, orientation: Orientation): MosaicData {
  const colours = turnTable(stored.colours, area, orientation)
  const black = turnTable(stored.black, area, orientation)
  return {
    kind: 'mosaic',
    ...uprightSize(area, orientation),
    codes: turnCodes(stored, area, orientation),
    cfa: { columns: colours.columns, rows: colours.rows, colours: colours.entries },
    black: { columns: black.columns, rows: black.rows, codes: black.entries },
    white: stored.white,
  }
}

/** The visible `area` of stored three-channel data as upright sensor data; takes the stored codes over as well. */
export function uprightLinear(stored: StoredLinear, area: Rectangle, orientation: Orientation): LinearData {
  const codes = turnCodes(stored, area, orientation)
  return { kind: 'linear', ...uprightSize(area, orientation), codes, black: stored.black, white: stored.white }
}
