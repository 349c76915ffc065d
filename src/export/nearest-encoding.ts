// Which encoding lets a cube come nearest to a chain, measured with small cubes over colours of the frame: none is best for all
// chains. The curve of ACEScct keeps bright light, but is coarse where saturated colours are dark.
import { OUTPUT_SPACES } from '../colour/output-space.ts'
import { TABLE_ENCODINGS, type TableEncodingId } from '../colour/table-encoding.ts'
import { bakeCube } from '../luts/bake-cube.ts'
import type { ColourMap } from '../pipeline/pointwise-map.ts'
import { tableAccuracy, throughCube, throughLink } from './table-accuracy.ts'

/** Points a side of the cubes that are tried (our choice): the least that is written, in which encodings differ most. */
const TRIED = 17
/** Share of the colours that an encoding may leave outside (our choice). */
const MOST_OUTSIDE = 0.002

const ids = Object.keys(TABLE_ENCODINGS) as TableEncodingId[]

/** Encodings that a kind of file may be in: an engine applies a device link to pictures, so it is in a space of pictures. */
export function encodingsOf(format: 'cube' | 'icc'): TableEncodingId[] {
  return format === 'cube' ? ids : ids.filter((id) => Object.hasOwn(OUTPUT_SPACES, id))
}

/** Of the encodings that hold nearly all of `colours` (linear `workingRgb`, interleaved), the one with the least difference in 99 of 100. */
export function nearestEncoding(format: 'cube' | 'icc', colours: Float64Array, direct: ColourMap): TableEncodingId {
  const tried = encodingsOf(format).map((id) => {
    const data = bakeCube(TRIED, TABLE_ENCODINGS[id], direct)
    const through =
      format === 'cube'
        ? throughCube(data, TRIED, TABLE_ENCODINGS[id])
        : throughLink(data, TRIED, TABLE_ENCODINGS[id], direct)
    const { p99, outside } = tableAccuracy(colours, direct, through)
    return { id, outside: outside <= MOST_OUTSIDE ? 0 : outside, p99: Number.isFinite(p99) ? p99 : Infinity }
  })
  tried.sort((a, b) => a.outside - b.outside || a.p99 - b.p99)
  return tried[0].id
}
