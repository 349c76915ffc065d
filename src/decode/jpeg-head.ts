// What stands before the pixels of a JPEG file (ITU-T T.81 annex B): its kind and size, the EXIF block and the colour profile.
// Read by ourselves, because the decoder hands over pixels only.

export interface JpegHead {
  /** Baseline, extended and progressive Huffman coding: the kinds that are decoded here. */
  readonly isCommon: boolean
  readonly bits: number
  readonly components: number
  /** What the mean chroma of a block is divided by and rounded; 1 where no table tells. */
  readonly chromaQuantiser: number
  /** The TIFF structure inside the EXIF segment, or empty. */
  readonly exif: Uint8Array
  /** The embedded ICC profile, or null. */
  readonly profile: Uint8Array | null
}

const commonFrames = [0xc0, 0xc1, 0xc2]
/** Markers 0xC0…0xCF but tables and reserved ones begin a frame. */
const isFrame = (marker: number) => marker >= 0xc0 && marker <= 0xcf && ![0xc4, 0xc8, 0xcc].includes(marker)
const startOfScan = 0xda

function startsWith(segment: Uint8Array, text: string): boolean {
  return Array.from(text).every((letter, i) => segment[i] === letter.charCodeAt(0))
}

/** Chunks of a profile in order (ICC.1:2022 annex B.4): after the name each carries its number and their count. */
function joinProfile(chunks: readonly Uint8Array[]): Uint8Array | null {
  const numbered = chunks.map((chunk) => ({ number: chunk[12], count: chunk[13], bytes: chunk.subarray(14) }))
  numbered.sort((a, b) => a.number - b.number)
  const whole = numbered.every(({ number, count }, i) => number === i + 1 && count === numbered.length)
  if (numbered.length === 0 || !whole) return null
  return Uint8Array.from(numbered.flatMap(({ bytes }) => [...bytes]))
}

/** First entries of the quantisation tables in a segment, by their number (B.2.4.1); 16-bit ones where the upper half byte says so. */
function addQuantisers(segment: Uint8Array, quantisers: Map<number, number>): void {
  for (let at = 0; at < segment.length;) {
    const isWide = segment[at] >> 4 > 0
    quantisers.set(segment[at] & 15, isWide ? segment[at + 1] * 256 + segment[at + 2] : segment[at + 1])
    at += isWide ? 129 : 65
  }
}

/** The head of a JPEG, or null where it ends before its picture begins. */
export function readJpegHead(bytes: Uint8Array): JpegHead | null {
  const chunks: Uint8Array[] = []
  let exif = new Uint8Array()
  const quantisers = new Map<number, number>()
  let frame: Pick<JpegHead, 'isCommon' | 'bits' | 'components'> | null = null
  let chromaTable = -1
  for (let at = 2; at + 4 <= bytes.length;) {
    if (bytes[at] !== 0xff) return null
    const marker = bytes[at + 1]
    if (marker === 0xff) {
      at++
      continue
    }
    const length = bytes[at + 2] * 256 + bytes[at + 3]
    const segment = bytes.subarray(at + 4, at + 2 + length)
    if (marker === startOfScan) break
    if (marker === 0xdb) addQuantisers(segment, quantisers)
    // Three bytes a component from the sixth on: name, sampling, number of its table (B.2.2).
    if (isFrame(marker)) chromaTable = segment[11]
    if (isFrame(marker)) frame = { isCommon: commonFrames.includes(marker), bits: segment[0], components: segment[5] }
    if (marker === 0xe1 && exif.length === 0 && startsWith(segment, 'Exif\0\0')) exif = segment.slice(6)
    if (marker === 0xe2 && startsWith(segment, 'ICC_PROFILE\0')) chunks.push(segment)
    at += 2 + length
  }
  return frame && { ...frame, chromaQuantiser: quantisers.get(chromaTable) ?? 1, exif, profile: joinProfile(chunks) }
}
