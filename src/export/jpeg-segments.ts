// Puts EXIF and the profile into an encoded JPEG, whose encoder knows neither.
// Segments: ITU-T T.81 annex B; EXIF in APP1: CIPA DC-008 4.7.2; the profile in APP2: ICC.1:2022 annex B.4.

const START_OF_IMAGE = [0xff, 0xd8]
const APP0 = 0xe0
const APP1 = 0xe1
const APP2 = 0xe2
/** A segment's length field counts itself and is 16 bits. */
const largestPayload = 65533

function segment(marker: number, identifier: string, payload: Uint8Array, ...numbering: number[]): Uint8Array {
  const head = [...new TextEncoder().encode(identifier), ...numbering]
  const length = 2 + head.length + payload.length
  if (length > largestPayload + 2) throw new RangeError(`${length} bytes do not fit into one JPEG segment.`)
  const bytes = new Uint8Array(2 + length)
  bytes.set([0xff, marker, length >> 8, length & 255, ...head])
  bytes.set(payload, 4 + head.length)
  return bytes
}

/**
 * The parts of a JPEG file in order: its start, EXIF, profile, then what the encoder wrote but for its JFIF segment,
 * which would otherwise stand where EXIF has to.
 */
export function describedJpeg(encoded: Uint8Array, exifTiff: Uint8Array, profile: Uint8Array): Uint8Array[] {
  const hasJfif = encoded[2] === 0xff && encoded[3] === APP0
  const body = hasJfif ? 4 + ((encoded[4] << 8) | encoded[5]) : START_OF_IMAGE.length
  return [
    Uint8Array.from(START_OF_IMAGE),
    segment(APP1, 'Exif\0\0', exifTiff),
    segment(APP2, 'ICC_PROFILE\0', profile, 1, 1),
    encoded.subarray(body),
  ]
}
