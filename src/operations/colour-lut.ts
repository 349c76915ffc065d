// Colour table: linear `workingRgb` in and out, unbounded, through a line or cube over the encoded 0…1 that is declared for it.
// A table ends where its numbers end, light does not: colours brighter than its range are read at its upper end along their own
// ray and scaled back up, so that an exchange of colours stays one in highlights; what lies below it is added back untouched.
import glsl from '../../shaders/operations/colour-lut.glsl?raw'
import {
  decodeFromTable,
  encodeForTable,
  TABLE_ENCODINGS,
  type TableEncoding,
  type TableEncodingId,
} from '../colour/table-encoding.ts'
import { readCube, readLine } from '../math/read-table.ts'
import { choice } from './controls.ts'
import { defineOperation, type Supplies, type Table } from './define.ts'

/** Input is held below this: the largest half float, far beyond white. */
const LIMIT = 65504

const straightLine: Table = { kind: '1d', width: 2, height: 1, data: new Float32Array([0, 0, 0, 1, 1, 1]) }
const straightCube: Table = {
  kind: '3d',
  width: 2,
  height: 2,
  data: Float32Array.from({ length: 24 }, (_, i) => (Math.floor(i / 3) >> (i % 3)) & 1),
}

/** The name under which a table is supplied. */
export const lutSupply = (tableId: string) => `lut ${tableId}`

/** The table a step asks for, or undefined where nobody supplies it. */
const suppliedLut = (supplies: Supplies, tableId: string): Table | undefined => supplies[lutSupply(tableId)]

const known = Object.values(TABLE_ENCODINGS)
const encodings = known.map(({ id, title }) => ({ value: id, label: title }))

/** The numbers of a curve as the shader takes them. */
const curveNumbers = ({ curve: { slope, threshold, exponent, scale } }: TableEncoding) => [
  slope,
  threshold,
  exponent,
  scale,
]

/** Three numbers in work. */
const read = new Float64Array(3)

export const colourLut = defineOperation({
  id: 'colourLut',
  version: 1,
  title: 'Colour table',
  place: 'free',
  controls: {
    /** SHA-256 of the table; without one the step changes nothing. */
    table: { kind: 'text', label: 'Table', initial: '' },
    name: { kind: 'text', label: 'Name of the table', initial: '' },
    takes: choice('Takes', encodings, 'acescct'),
    gives: choice('Gives', encodings, 'acescct'),
  },
  derive(values) {
    const takes = TABLE_ENCODINGS[values.takes as TableEncodingId]
    const gives = TABLE_ENCODINGS[values.gives as TableEncodingId]
    return {
      acts: values.table !== '',
      toTable: takes.fromWorking,
      fromTable: takes.toWorking,
      fromGiven: gives.toWorking,
      /** Linear light at the table's ends. */
      lowest: decodeFromTable(takes, 0),
      highest: decodeFromTable(takes, 1),
      limit: LIMIT,
      /** Places in the list of encodings, for the reference; the shader reads the numbers beside them. */
      takes: known.indexOf(takes),
      gives: known.indexOf(gives),
      takesLog: takes.isLog,
      takesCurve: curveNumbers(takes),
      givesLog: gives.isLog,
      givesCurve: curveNumbers(gives),
    }
  },
  tables(values, _facts, supplies) {
    const table = suppliedLut(supplies, values.table)
    return {
      cube: table?.kind === '3d' ? table : straightCube,
      line: table?.kind === '1d' ? table : straightLine,
    }
  },
  apply(pixel, k, { cube, line }) {
    if (!k.acts) return
    const { toTable, fromTable, fromGiven, lowest, highest } = k
    const takes = known[k.takes]
    const gives = known[k.gives]
    const red = pixel[0]
    const green = pixel[1]
    const blue = pixel[2]
    const r = toTable[0] * red + toTable[1] * green + toTable[2] * blue
    const g = toTable[3] * red + toTable[4] * green + toTable[5] * blue
    const b = toTable[6] * red + toTable[7] * green + toTable[8] * blue
    const scale = Math.min(Math.max(r / highest, g / highest, b / highest, 1), k.limit)
    const heldR = Math.min(Math.max(r / scale, lowest), highest)
    const heldG = Math.min(Math.max(g / scale, lowest), highest)
    const heldB = Math.min(Math.max(b / scale, lowest), highest)
    read[0] = encodeForTable(takes, heldR)
    read[1] = encodeForTable(takes, heldG)
    read[2] = encodeForTable(takes, heldB)
    readLine(line.data, line.width, read)
    readCube(cube.data, cube.width, read)
    const givenR = decodeFromTable(gives, read[0])
    const givenG = decodeFromTable(gives, read[1])
    const givenB = decodeFromTable(gives, read[2])
    const belowR = r / scale - heldR
    const belowG = g / scale - heldG
    const belowB = b / scale - heldB
    for (let i = 0; i < 3; i++) {
      const row = 3 * i
      const given = fromGiven[row] * givenR + fromGiven[row + 1] * givenG + fromGiven[row + 2] * givenB
      const below = fromTable[row] * belowR + fromTable[row + 1] * belowG + fromTable[row + 2] * belowB
      pixel[i] = scale * (given + below)
    }
  },
  glsl,
  tolerance: 5e-6,
})
