// An ICC version 4 display profile of matrix and parametric curve for an output space: some 600 bytes, made on the spot.
// It is computed from the same record that encodes the pixels, so that profile and picture cannot disagree.
import type { OutputSpace } from '../colour/output-space.ts'
import { adaptWhite, type Chromaticity, rgbToXyz } from '../colour/primaries.ts'
import type { TransferCurve } from '../colour/transfer-curve.ts'
import { multiply } from '../math/mat3.ts'

/** Profile connection white, ICC.1:2022 7.2.16. */
const CONNECTION_WHITE = [0.9642, 1, 0.8249]
const connectionChromaticity: Chromaticity = [0.9642 / (0.9642 + 1 + 0.8249), 1 / (0.9642 + 1 + 0.8249)]

/** Header length, ICC.1:2022 table 17. */
const HEADER_BYTES = 128
/** One entry of the tag table: signature, offset, size. */
const TAG_ENTRY_BYTES = 12

const ascii = (text: string) => Array.from(text, (letter) => letter.charCodeAt(0))
const uint16 = (value: number) => [(value >>> 8) & 255, value & 255]
const uint32 = (value: number) => [...uint16(value >>> 16), ...uint16(value & 65535)]
const fixedOf = (value: number) => Math.round(value * 65536)
const fixed = (values: readonly number[]) => values.flatMap((value) => uint32(fixedOf(value)))

/** `mluc` with one English record; text is UTF-16, big-endian. */
function localised(text: string): number[] {
  const letters = Array.from(text, (letter) => uint16(letter.charCodeAt(0))).flat()
  return [
    ...ascii('mluc'),
    ...uint32(0),
    ...uint32(1),
    ...uint32(12),
    ...ascii('enUS'),
    ...uint32(letters.length),
    ...uint32(28),
    ...letters,
  ]
}

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
  const tags: readonly (readonly [signature: string, data: number[]])[] = [
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
  ]

  const table: number[] = []
  const data: number[] = []
  const offsets = new Map<number[], number>()
  const dataStart = HEADER_BYTES + 4 + tags.length * TAG_ENTRY_BYTES
  for (const [signature, bytes] of tags) {
    if (!offsets.has(bytes)) {
      offsets.set(bytes, dataStart + data.length)
      data.push(...bytes, ...[0, 0, 0].slice(0, (4 - (bytes.length % 4)) % 4))
    }
    table.push(...ascii(signature), ...uint32(offsets.get(bytes)!), ...uint32(bytes.length))
  }

  const profile = new Uint8Array(dataStart + data.length)
  const size = uint32(profile.length)
  profile.set([...size, ...uint32(0), ...uint32(0x04400000), ...ascii('mntrRGB XYZ ')])
  // A fixed date: the same picture gives the same file. The illuminant at 68 is the connection white.
  profile.set([...uint16(2026), ...uint16(1), ...uint16(1)], 24)
  profile.set(ascii('acsp'), 36)
  profile.set(fixed(CONNECTION_WHITE), 68)
  profile.set([...uint32(tags.length), ...table, ...data], HEADER_BYTES)
  return profile
}
