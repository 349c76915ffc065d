// Image file directories of TIFF 6.0, little-endian: the skeleton of a TIFF file and of the EXIF block in a JPEG.
// Entries are plain values; layout (offsets, order, padding) is worked out here, once for both.

/** A rational number as numerator and denominator. */
export type Rational = readonly [numerator: number, denominator: number]

export type EntryValue =
  | { readonly type: 'ascii'; readonly text: string }
  | { readonly type: 'bytes' | 'undefined'; readonly values: Uint8Array }
  | { readonly type: 'short' | 'long'; readonly values: readonly number[] }
  | { readonly type: 'rational'; readonly values: readonly Rational[] }
  /** A directory below this one, e.g. EXIF or GPS. */
  | { readonly type: 'directory'; readonly entries: Directory }

/** Entries by tag number. */
export type Directory = ReadonlyMap<number, EntryValue>

/** Type codes of TIFF 6.0 section 2; a directory below is pointed at by a LONG. */
const typeCodes = { bytes: 1, ascii: 2, short: 3, long: 4, rational: 5, undefined: 7, directory: 4 } as const

interface EncodedEntry {
  readonly count: number
  readonly bytes: Uint8Array
}

function integers(values: readonly number[], bytesEach: 2 | 4): Uint8Array<ArrayBuffer> {
  const view = new DataView(new ArrayBuffer(values.length * bytesEach))
  values.forEach((value, i) =>
    bytesEach === 2 ? view.setUint16(2 * i, value, true) : view.setUint32(4 * i, value, true),
  )
  return new Uint8Array(view.buffer)
}

/** Text is UTF-8 (common practice beyond the 7 bits of the standard) and ends in a zero byte. */
function encodeEntry(entry: Exclude<EntryValue, { type: 'directory' }>): EncodedEntry {
  switch (entry.type) {
    case 'ascii': {
      const bytes = new TextEncoder().encode(`${entry.text}\0`)
      return { count: bytes.length, bytes }
    }
    case 'short':
      return { count: entry.values.length, bytes: integers(entry.values, 2) }
    case 'long':
      return { count: entry.values.length, bytes: integers(entry.values, 4) }
    case 'rational':
      return { count: entry.values.length, bytes: integers(entry.values.flat(), 4) }
    default:
      return { count: entry.values.length, bytes: entry.values }
  }
}

const evenLength = (length: number) => length + (length & 1)

/**
 * Bytes of a directory that will stand at `position` of its file, with everything it points at directly behind it.
 * `position` is even. No next directory follows.
 */
export function encodeDirectory(directory: Directory, position: number): Uint8Array<ArrayBuffer> {
  const tags = [...directory.keys()].sort((a, b) => a - b)
  const tableBytes = 2 + 12 * tags.length + 4
  const table = new DataView(new ArrayBuffer(tableBytes))
  const behind: Uint8Array[] = []
  let end = tableBytes

  table.setUint16(0, tags.length, true)
  tags.forEach((tag, i) => {
    const entry = directory.get(tag)!
    const at = 2 + 12 * i
    const below = entry.type === 'directory'
    const { count, bytes } = below
      ? { count: 1, bytes: encodeDirectory(entry.entries, position + end) }
      : encodeEntry(entry)
    table.setUint16(at, tag, true)
    table.setUint16(at + 2, typeCodes[entry.type], true)
    table.setUint32(at + 4, count, true)
    if (!below && bytes.length <= 4) {
      new Uint8Array(table.buffer).set(bytes, at + 8)
    } else {
      table.setUint32(at + 8, position + end, true)
      behind.push(bytes)
      end += evenLength(bytes.length)
    }
  })

  const encoded = new Uint8Array(end)
  encoded.set(new Uint8Array(table.buffer))
  let at = tableBytes
  for (const bytes of behind) {
    encoded.set(bytes, at)
    at += evenLength(bytes.length)
  }
  return encoded
}

/** The eight bytes a little-endian TIFF starts with. */
export function tiffHeader(directoryPosition: number): Uint8Array<ArrayBuffer> {
  const header = new DataView(new ArrayBuffer(8))
  header.setUint16(0, 0x4949)
  header.setUint16(2, 42, true)
  header.setUint32(4, directoryPosition, true)
  return new Uint8Array(header.buffer)
}
