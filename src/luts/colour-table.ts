// A colour table as the chain uses it: one line or one cube of 32-bit floats over 0…1. Whatever a file holds is brought to
// this form: as it stands where one grid says it exactly, else sampled, and then the largest difference is told.
import {
  decodeFromTable,
  encodeForTable,
  isTableEncoding,
  TABLE_ENCODINGS,
  type TableEncodingId,
} from '../colour/table-encoding.ts'
import { readCube, readLine } from '../math/read-table.ts'
import { applyTransform } from './apply-transform.ts'
import type { ColourTransform, TransformNode } from './colour-transform.ts'
import { sampleCube } from './sample-cube.ts'

/** Points a side of a cube that is used as it stands, and of one that is sampled: 4 MB on the graphics. */
const MOST_CUBE = 65
/** Entries of a line that is used as it stands; every graphics takes as many. */
const MOST_LINE = 2048

/** Sampled numbers as both engines read them; the shape of a `Table` of a chain. */
interface TableData {
  readonly kind: '1d' | '3d'
  readonly width: number
  readonly height: number
  readonly data: Float32Array
}

export interface ColourTable {
  readonly name: string
  /** The encodings of what it takes and gives: as its file declares them, or those to begin with. */
  readonly takes: TableEncodingId
  readonly gives: TableEncodingId
  readonly table: TableData
  /** What the file says of itself. */
  readonly remarks: readonly string[]
  /** What sampling changed: largest and mean difference from the file's transform, of the table's range; null where nothing. */
  readonly sampled: { readonly largest: number; readonly mean: number } | null
}

/** Differences up to this are rounding. */
const ROUNDING = 2e-6
/** Places at which a sampled table is compared with its transform. */
const TRIALS = 4096

/** The words by which a file that was written here declares its encoding, after which its id follows. */
export const ENCODING_REMARK = 'Rimeleaf encoding: '

function declaredEncoding({ remarks }: ColourTransform): TableEncodingId | null {
  const remark = remarks.find((line) => line.startsWith(ENCODING_REMARK))
  const id = remark?.slice(ENCODING_REMARK.length).trim() ?? ''
  return isTableEncoding(id) ? id : null
}

const isCurved = ({ kind }: TransformNode) => kind !== 'matrix' && kind !== 'range'

/** Whether a transform begins with what only linear light needs: a logarithm, or a line over all half floats. */
function takesLinear({ nodes }: ColourTransform): boolean {
  const first = nodes.find(isCurved)
  return (first?.kind === 'log' && first.direction === 'encode') || (first?.kind === 'line' && first.halfDomain)
}

/** Whether its last curve leads back to linear light. */
function givesLinear({ nodes }: ColourTransform): boolean {
  const last = nodes.findLast(isCurved)
  return last?.kind === 'log' && last.direction === 'decode'
}

/** The same on the numbers of the ACEScct curve: a cube over linear light would be far too coarse in the dark. */
function onLogCurve(apply: (rgb: Float64Array) => void, givesToo: boolean): (rgb: Float64Array) => void {
  const { acescct } = TABLE_ENCODINGS
  return (rgb) => {
    for (let i = 0; i < 3; i++) rgb[i] = decodeFromTable(acescct, rgb[i])
    apply(rgb)
    if (!givesToo) return
    for (let i = 0; i < 3; i++) rgb[i] = encodeForTable(acescct, rgb[i])
  }
}

/** Mean and largest difference of a table from `apply` at places spread evenly by the R3 sequence (Roberts 2018). */
function differenceOf(table: TableData, apply: (rgb: Float64Array) => void): { largest: number; mean: number } {
  const steps = [0.8191725133961645, 0.6710436067037893, 0.5497004779019703]
  const [wanted, read] = [new Float64Array(3), new Float64Array(3)]
  let largest = 0
  let sum = 0
  for (let i = 1; i <= TRIALS; i++) {
    for (let c = 0; c < 3; c++) wanted[c] = read[c] = (0.5 + i * steps[c]) % 1
    apply(wanted)
    if (table.kind === '1d') readLine(table.data, table.width, read)
    else readCube(table.data, table.width, read)
    for (let c = 0; c < 3; c++) {
      const apart = Math.abs(read[c] - wanted[c])
      largest = Math.max(largest, apart)
      sum += apart
    }
  }
  return { largest, mean: sum / (TRIALS * 3) }
}

const cubeOf = (width: number, data: Float32Array): TableData => ({ kind: '3d', width, height: width, data })

type Map = (rgb: Float64Array) => void
type Made = Pick<ColourTable, 'table' | 'sampled'>

/** The transform as one line or cube that says it exactly without sampling, or null. */
function asItStands({ nodes }: ColourTransform): TableData | null {
  const [only, second] = nodes
  if (second) return null
  if (only.kind === 'cube' && only.size <= MOST_CUBE && only.reading === 'tetrahedral')
    return cubeOf(only.size, only.data)
  if (only.kind === 'line' && !only.halfDomain && only.length <= MOST_LINE)
    return { kind: '1d', width: only.length, height: 1, data: only.data }
  return null
}

/** The first of the grids that says a map within rounding, or the last with its difference. Throws where numbers are not finite. */
function sampledOn(grids: readonly number[], apply: Map): Made {
  for (const size of grids) {
    const table = cubeOf(size, sampleCube(size, apply))
    if (!table.data.every(Number.isFinite)) throw new RangeError('its transform gives numbers that are not finite')
    const difference = differenceOf(table, apply)
    if (difference.largest <= ROUNDING) return { table, sampled: null }
    if (size === grids.at(-1)) return { table, sampled: difference }
  }
  throw new RangeError('no grid was given')
}

/** A table with the encodings of what it takes and gives. */
function tableOf(transform: ColourTransform): Made & Pick<ColourTable, 'takes' | 'gives'> {
  const declared = declaredEncoding(transform)
  const standing = asItStands(transform)
  const apply: Map = (rgb) => applyTransform(transform, rgb)
  if (standing) return { table: standing, sampled: null, takes: declared ?? 'srgb', gives: declared ?? 'srgb' }
  const isLinear = declared === 'linear' || takesLinear(transform)
  if (!isLinear || declared === 'linear') {
    const straight = sampledOn([2], apply)
    if (straight.sampled === null) return { ...straight, takes: declared ?? 'srgb', gives: declared ?? 'srgb' }
  }
  const own = transform.nodes.flatMap((node) => (node.kind === 'cube' && node.size < MOST_CUBE ? [node.size] : []))
  const grids = [...own, MOST_CUBE]
  if (!isLinear) return { ...sampledOn(grids, apply), takes: declared ?? 'srgb', gives: declared ?? 'srgb' }
  const givesToo = declared === 'linear' || givesLinear(transform)
  return { ...sampledOn(grids, onLogCurve(apply, givesToo)), takes: 'acescct', gives: givesToo ? 'acescct' : 'srgb' }
}

/**
 * The colour table of a file's transform; `name` serves where the file has no title.
 * Throws a RangeError where the transform gives numbers that are not finite.
 */
export function colourTableOf(transform: ColourTransform, name: string): ColourTable {
  return { name: transform.title.trim() || name, remarks: transform.remarks, ...tableOf(transform) }
}
