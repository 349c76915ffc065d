// A map of linear `workingRgb` as a cube over the numbers of an encoding, which the cube both takes and gives.
import { decodeFromTable, encodeForTable, type TableEncoding } from '../colour/table-encoding.ts'
import { transform } from '../math/mat3.ts'
import { sampleCube } from './sample-cube.ts'

/** `size`³ entries, red fastest; not held to 0…1, so that nothing is lost where a reader keeps such numbers. */
export function bakeCube(size: number, encoding: TableEncoding, map: (rgb: Float64Array) => void): Float32Array {
  return sampleCube(size, (rgb) => {
    const linear = rgb.map((value) => decodeFromTable(encoding, value))
    rgb.set(transform(encoding.toWorking, [linear[0], linear[1], linear[2]]))
    map(rgb)
    const given = transform(encoding.fromWorking, [rgb[0], rgb[1], rgb[2]])
    for (let i = 0; i < 3; i++) rgb[i] = encodeForTable(encoding, given[i])
  })
}
