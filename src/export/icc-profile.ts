// An ICC version 4 display profile of matrix and parametric curve for an output space: some 600 bytes, made on the spot.
// It is computed from the same record that encodes the pixels, so that profile and picture cannot disagree.
import type { OutputSpace } from '../colour/output-space.ts'
import { adaptWhite, type Chromaticity, rgbToXyz } from '../colour/primaries.ts'
import type { TransferCurve } from '../colour/transfer-curve.ts'
import { multiply } from '../math/mat3.ts'
import { ascii, CONNECTION_WHITE, fixed, fixedOf, iccFile, localised, uint16, uint32 } from './icc-file.ts'

const connectionChromaticity: Chromaticity = [0.9642 / (0.9642 + 1 + 0.8249), 1 / (0.9642 + 1 + 0.8249)]

/** `para` type 3, decoding: (a·x + b)^g from d on, c·x below it. */
function parametricCurve({ slope, threshold, exponent, scale }: TransferCurve): number[] {
  const [g, a, b, c, d] = [1 / exponent, 1 / scale, (scale - 1) / scale, 1 / slope, slope * threshold]
  return [...ascii('para'), ...uint32(0), ...uint16(3), ...uint16(0), ...fixed([g, a, b, c, d])]
}

/** Columns of linear RGB to connection XYZ; green takes the rounding, so that white lands on the connection white exactly. */
function primaryColumns(space: OutputSpace): number[][] {
  const matrix = multiply(adaptWhite(space.primaries.white, connectionChromaticity), rgbToXyz(space.primaries))
  const column = (index: number) => [0, 3, 6].map((row) => fixedOf(matrix[row + index]) / 65536)
  const [red, blue] = [column(0), column(2)]
  const green = CONNECTION_WHITE.map((white, i) => fixedOf(white) / 65536 - red[i] - blue[i])
  return [red, green, blue]
}

/** Bytes of a profile for pixels encoded in `space`. */
export function iccProfile(space: OutputSpace): Uint8Array<ArrayBuffer> {
  const xyz = (values: readonly number[]) => [...ascii('XYZ '), ...uint32(0), ...fixed(values)]
  const [red, green, blue] = primaryColumns(space)
  const curve = parametricCurve(space.curve)
  const adaptation = adaptWhite(space.primaries.white, connectionChromaticity)
  return iccFile('mntrRGB XYZ ', [
    ['desc', localised(`Rimeleaf ${space.title}`)],
    ['cprt', localised('No copyright, use freely')],
    ['wtpt', xyz(CONNECTION_WHITE)],
    ['chad', [...ascii('sf32'), ...uint32(0), ...fixed(adaptation)]],
    ['rXYZ', xyz(red)],
    ['gXYZ', xyz(green)],
    ['bXYZ', xyz(blue)],
    ['rTRC', curve],
    ['gTRC', curve],
    ['bTRC', curve],
  ])
}
