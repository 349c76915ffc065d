// The numbers a colour table works on: primaries and curve between linear `workingRgb` and the table's own 0…1.
// A table says nothing about its colours by itself, so the encoding is declared; wrong ones are the usual fault with tables.
import { invert } from '../math/mat3.ts'
import { decodeAcescct, encodeAcescct } from './acescct.ts'
import { OUTPUT_SPACES } from './output-space.ts'
import { decode, encode, type TransferCurve } from './transfer-curve.ts'

export type TableEncodingId = 'acescct' | 'srgb' | 'display-p3' | 'rec2020' | 'romm' | 'linear'

export interface TableEncoding {
  readonly id: TableEncodingId
  readonly title: string
  /** What the numbers are, in one line for titles and comments of files. */
  readonly description: string
  /** Linear `workingRgb` to the table's linear RGB, and back; row-major. */
  readonly fromWorking: readonly number[]
  readonly toWorking: readonly number[]
  /** The curve of ACEScct if true, else `curve`. */
  readonly isLog: boolean
  readonly curve: TransferCurve
}

const IDENTITY = [1, 0, 0, 0, 1, 0, 0, 0, 1]
/** A line only: the threshold lies beyond every number. */
const STRAIGHT: TransferCurve = { slope: 1, threshold: 1e30, exponent: 1, scale: 1 }

const inWorking = (id: TableEncodingId, title: string, description: string, isLog: boolean): TableEncoding => ({
  id,
  title,
  description,
  fromWorking: IDENTITY,
  toWorking: IDENTITY,
  isLog,
  curve: STRAIGHT,
})

function inSpace(id: 'srgb' | 'display-p3' | 'rec2020' | 'romm', description: string): TableEncoding {
  const { title, fromWorking, curve } = OUTPUT_SPACES[id]
  return { id, title, description, fromWorking, toWorking: invert(fromWorking), isLog: false, curve }
}

/** In the order of how well they suit: the first keeps highlights and shadows alike. */
export const TABLE_ENCODINGS: Readonly<Record<TableEncodingId, TableEncoding>> = {
  acescct: inWorking(
    'acescct',
    'ACEScct curve',
    'light with Rec. 2020 primaries, D65, in the curve of ACEScct (S-2016-001)',
    true,
  ),
  srgb: inSpace('srgb', 'sRGB as encoded by IEC 61966-2-1'),
  'display-p3': inSpace('display-p3', 'Display P3 as encoded in CSS Color 4'),
  rec2020: inSpace('rec2020', 'Rec. 2020 in the camera curve of ITU-R BT.2020-2'),
  romm: inSpace('romm', 'ROMM RGB as encoded by ISO 22028-2 (exponent 1.8)'),
  linear: inWorking('linear', 'Linear light', 'linear light with Rec. 2020 primaries, D65', false),
}

export const isTableEncoding = (id: string): id is TableEncodingId => Object.hasOwn(TABLE_ENCODINGS, id)

/** Table value of one linear channel. */
export const encodeForTable = ({ isLog, curve }: Pick<TableEncoding, 'isLog' | 'curve'>, linear: number): number =>
  isLog ? encodeAcescct(linear) : encode(curve, linear)

/** Linear channel of a table value; the inverse of `encodeForTable`. */
export const decodeFromTable = ({ isLog, curve }: Pick<TableEncoding, 'isLog' | 'curve'>, coded: number): number =>
  isLog ? decodeAcescct(coded) : decode(curve, coded)
