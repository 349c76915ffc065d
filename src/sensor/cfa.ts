// Colour filter arrays as repeating tables: read from a packed word, moved to another origin, cut to their smallest period.
import type { Cfa, CfaColour } from '../frame/frame.ts'

/** A repeating table; entry of a place: `(y % rows) * columns + (x % columns)`. */
export interface RepeatingTable<T> {
  readonly columns: number
  readonly rows: number
  readonly entries: readonly T[]
}

/** The remainder that is never negative. */
function modulo(value: number, period: number): number {
  return ((value % period) + period) % period
}

/** The entry at any place, also outside the first period. */
export function entryAt<T>({ columns, rows, entries }: RepeatingTable<T>, x: number, y: number): T {
  return entries[modulo(y, rows) * columns + modulo(x, columns)]
}

/** A table of the given period whose entry at (x, y) is `of(x, y)`. */
export function makeTable<T>(columns: number, rows: number, of: (x: number, y: number) => T): RepeatingTable<T> {
  const entries = Array.from({ length: columns * rows }, (_, i) => of(i % columns, Math.floor(i / columns)))
  return { columns, rows, entries }
}

/** The table as seen from (left, top) of its old origin. */
export function moveOrigin<T>(table: RepeatingTable<T>, left: number, top: number): RepeatingTable<T> {
  return makeTable(table.columns, table.rows, (x, y) => entryAt(table, left + x, top + y))
}

/** The same pattern with the smallest period along each axis. */
export function shrinkTable<T>(table: RepeatingTable<T>): RepeatingTable<T> {
  const { columns, rows } = table
  const repeats = (across: number, down: number) =>
    table.entries.every((entry, i) => entry === entryAt(table, (i % columns) % across, Math.floor(i / columns) % down))
  const smallest = (length: number, fits: (period: number) => boolean) => {
    let period = 1
    while (period < length && !(length % period === 0 && fits(period))) period++
    return period
  }
  const across = smallest(columns, (period) => repeats(period, rows))
  const down = smallest(rows, (period) => repeats(across, period))
  return makeTable(across, down, (x, y) => entryAt(table, x, y))
}

/**
 * The array of LibRaw's `filters` word: two bits for each of 8 rows × 2 columns; 3 is the second green. Not for 6×6
 * arrays, which have a number there that only says so.
 */
export function cfaFromFilters(filters: number): Cfa {
  const table = makeTable(2, 8, (x, y) => {
    const colour = (filters >>> ((((y << 1) & 14) | (x & 1)) << 1)) & 3
    return (colour === 3 ? 1 : colour) as CfaColour
  })
  const { columns, rows, entries } = shrinkTable(table)
  return { columns, rows, colours: entries }
}

/** Whether an array is 2×2 with greens on a diagonal, the one that has demosaicing kernels of its own. */
export function isBayer({ columns, rows, colours }: Cfa): boolean {
  return columns === 2 && rows === 2 && ['0112', '2110', '1021', '1201'].includes(colours.join(''))
}
