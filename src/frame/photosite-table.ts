// What every photosite of a mosaic is, by its place in the repeating pattern: its colour and how a raw code becomes
// `cameraRgb` = (code − black) / (white − black), where 1 is saturation and noise below 0 is kept. One table joins the
// colour and the black pattern, so that loops over pixels need one index only.
import type { CfaColour, MosaicData } from './frame.ts'

export interface PhotositeTable {
  readonly columns: number
  readonly rows: number
  /** Row-major, `columns * rows` entries each; entry of a photosite: `(y % rows) * columns + (x % columns)`. */
  readonly colours: readonly CfaColour[]
  readonly black: Float64Array
  /** 1 / (white − black). */
  readonly scale: Float64Array
}

function leastCommonMultiple(a: number, b: number): number {
  let multiple = a
  while (multiple % b) multiple += a
  return multiple
}

/** The joined pattern of a mosaic. Throws a RangeError where white is not above every black. */
export function photositeTable({ cfa, black, white }: Pick<MosaicData, 'cfa' | 'black' | 'white'>): PhotositeTable {
  const columns = leastCommonMultiple(cfa.columns, black.columns)
  const rows = leastCommonMultiple(cfa.rows, black.rows)
  const colours: CfaColour[] = []
  const blacks = new Float64Array(columns * rows)
  for (let y = 0; y < rows; y++) {
    for (let x = 0; x < columns; x++) {
      colours.push(cfa.colours[(y % cfa.rows) * cfa.columns + (x % cfa.columns)])
      blacks[y * columns + x] = black.codes[(y % black.rows) * black.columns + (x % black.columns)]
    }
  }
  if (!blacks.every((code) => code < white)) throw new RangeError(`White (${white}) does not lie above every black.`)
  return { columns, rows, colours, black: blacks, scale: blacks.map((code) => 1 / (white - code)) }
}
