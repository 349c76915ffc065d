// How the pictures of a board stand on one sheet: in rows of one width, each with two lines of words below it, under a title.
// Lengths in pixels of the sheet.

export interface SheetLayout {
  readonly width: number
  readonly height: number
  /** Upper left of each picture, in the order of the board. */
  readonly places: readonly { readonly x: number; readonly y: number }[]
}

/** Margin of the sheet and distance between pictures; height of the title and of the words below a picture (our choice). */
export const margin = 48
const titleHeight = 64
const gap = 32
const wordsHeight = 64
/** Width that a row grows to before the next begins, relative to the height of the sheet: the shape of a screen (our choice). */
const wantedAspect = 1.6

/** The layout of `count` pictures of one size, nearest to the wanted shape. Throws a RangeError where there is none. */
export function layoutSheet(count: number, picture: { readonly width: number; readonly height: number }): SheetLayout {
  if (count < 1) throw new RangeError('A sheet needs at least one picture: keep a mark first.')
  const sizeOf = (columns: number) => {
    const rows = Math.ceil(count / columns)
    return {
      columns,
      width: 2 * margin + columns * picture.width + (columns - 1) * gap,
      height: 2 * margin + titleHeight + rows * (picture.height + wordsHeight) + (rows - 1) * gap,
    }
  }
  const apart = ({ width, height }: { width: number; height: number }) =>
    Math.abs(Math.log(width / height / wantedAspect))
  const { columns, width, height } = Array.from({ length: count }, (_, i) => sizeOf(i + 1)).reduce((a, b) =>
    apart(b) < apart(a) ? b : a,
  )
  const places = Array.from({ length: count }, (_, i) => ({
    x: margin + (i % columns) * (picture.width + gap),
    y: margin + titleHeight + Math.floor(i / columns) * (picture.height + wordsHeight + gap),
  }))
  return { width, height, places }
}
