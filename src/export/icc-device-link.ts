// A cube as an ICC device link (ICC.1:2022, version 4.4): the class of profile that takes and gives the same kind of pixels, which
// colour engines apply to pictures directly. Numbers are 16-bit, so what lies outside 0…1 ends at its edge.
import { ascii, iccFile, localised, uint32 } from './icc-file.ts'

export interface DeviceLink {
  readonly title: string
  /** What its pixels are before and after, for the record of what it links. */
  readonly ends: string
  readonly size: number
  /** size³ entries over 0…1, red fastest, interleaved. */
  readonly data: Float32Array
}

/** Code value of 1 in a table of two bytes. */
const MOST_CODE = 65535

/** The cube as a reader of the file has it: within 0…1 and rounded to 16 bits. */
export function asLinked(data: Float32Array): Float32Array {
  return data.map((value) => Math.round(Math.min(Math.max(value, 0), 1) * MOST_CODE) / MOST_CODE)
}

const identityCurve = [...ascii('curv'), ...uint32(0), ...uint32(0)]

/** `mAB ` of A curves, cube and B curves (10.12); its first channel runs slowest. */
function cubeTag(size: number, data: Float32Array): Uint8Array {
  const curves = [identityCurve, identityCurve, identityCurve].flat()
  const head = 32
  const cubeAt = head + curves.length
  const gridHead = 20
  const bytes = new Uint8Array(cubeAt + gridHead + Math.ceil((size ** 3 * 6) / 4) * 4 + curves.length)
  const curvesAt = bytes.length - curves.length
  // Channels in and out, then where B curves, matrix, M curves, cube and A curves stand; 0 is none.
  bytes.set([...ascii('mAB '), ...uint32(0), 3, 3, 0, 0, ...[curvesAt, 0, 0, cubeAt, head].flatMap(uint32)])
  bytes.set(curves, head)
  bytes.set([size, size, size], cubeAt)
  bytes[cubeAt + 16] = 2
  const view = new DataView(bytes.buffer)
  let at = cubeAt + gridHead
  for (let red = 0; red < size; red++)
    for (let green = 0; green < size; green++)
      for (let blue = 0; blue < size; blue++)
        for (let channel = 0; channel < 3; channel++, at += 2)
          view.setUint16(at, Math.round(data[((blue * size + green) * size + red) * 3 + channel] * MOST_CODE))
  bytes.set(curves, curvesAt)
  return bytes
}

/** `pseq`: what is linked (10.19); maker and model stay unsaid, and both ends are described alike. */
function sequenceTag(ends: string): number[] {
  // Even numbers of letters keep the next record on a multiple of four bytes.
  const described = localised(ends.padEnd(Math.ceil(ends.length / 2) * 2))
  const end = [...Array.from({ length: 20 }, () => 0), ...localised(''), ...described]
  return [...ascii('pseq'), ...uint32(0), ...uint32(2), ...end, ...end]
}

/** Bytes of the profile, with the four tags that its class must have (8.7). */
export function iccDeviceLink({ title, ends, size, data }: DeviceLink): Uint8Array<ArrayBuffer> {
  return iccFile('linkRGB RGB ', [
    ['desc', localised(title)],
    ['cprt', localised('No copyright, use freely')],
    ['pseq', sequenceTag(ends)],
    ['A2B0', cubeTag(size, asLinked(data))],
  ])
}
