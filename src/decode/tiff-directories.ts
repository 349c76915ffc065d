// The tags of a TIFF file (TIFF 6.0 and its relatives with other magic numbers): all directories that a raw file chains and
// nests. Read by ourselves because the decoder tells neither per-position black nor the exact active area. Damaged
// directories are left out, never followed outside the file.

export interface TiffDirectory {
  has(tag: number): boolean
  /** Numbers of a tag (rationals divided), or an empty list. */
  numbers(tag: number): number[]
  /** Bytes of a tag, however many, or undefined. */
  bytes(tag: number): Uint8Array | undefined
  /** Text of a tag without its closing zero, or undefined where absent or empty. */
  text(tag: number): string | undefined
}

/** SubIFDs, EXIF, GPS and interoperability directories. */
const subDirectoryTags = [330, 34665, 34853, 40965]
/** TIFF, and the magic numbers of two families of raw files built like it (from memory). */
const magics = [42, 0x4f52, 0x5352, 0x55]
const sizes: Record<number, number> = {
  1: 1,
  2: 1,
  3: 2,
  4: 4,
  5: 8,
  6: 1,
  7: 1,
  8: 2,
  9: 4,
  10: 8,
  11: 4,
  12: 8,
  13: 4,
}
/** No raw file nests more; keeps a directory that points to itself from going on for ever (our choice). */
const mostDirectories = 64
/** Longest value that is read: longer ones are tables nothing here asks for (our choice). */
const mostValues = 4096

function valueAt(view: DataView, type: number, at: number, little: boolean): number {
  if (type === 3) return view.getUint16(at, little)
  if (type === 4 || type === 13) return view.getUint32(at, little)
  if (type === 5) return view.getUint32(at, little) / view.getUint32(at + 4, little)
  if (type === 6) return view.getInt8(at)
  if (type === 8) return view.getInt16(at, little)
  if (type === 9) return view.getInt32(at, little)
  if (type === 10) return view.getInt32(at, little) / view.getInt32(at + 4, little)
  if (type === 11) return view.getFloat32(at, little)
  if (type === 12) return view.getFloat64(at, little)
  return view.getUint8(at)
}

/** All directories of the file, outermost first; none where it is no TIFF. */
export function readTiffDirectories(bytes: Uint8Array): TiffDirectory[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength)
  if (bytes.length < 8) return []
  const little = bytes[0] === 0x49 && bytes[1] === 0x49
  if (!little && !(bytes[0] === 0x4d && bytes[1] === 0x4d)) return []
  if (!magics.includes(view.getUint16(2, little))) return []

  const directories: TiffDirectory[] = []
  const waiting = [view.getUint32(4, little)]
  const seen = new Set<number>()
  for (let offset = waiting.shift(); offset !== undefined && seen.size < mostDirectories; offset = waiting.shift()) {
    if (seen.has(offset) || offset < 8 || offset + 2 > bytes.length) continue
    seen.add(offset)
    const count = view.getUint16(offset, little)
    if (offset + 2 + count * 12 + 4 > bytes.length) continue
    const entries = new Map<number, { type: number; count: number; at: number }>()
    for (let at = offset + 2; at < offset + 2 + count * 12; at += 12) {
      const type = view.getUint16(at + 2, little)
      const values = view.getUint32(at + 4, little)
      const length = (sizes[type] ?? 0) * values
      const start = length <= 4 ? at + 8 : view.getUint32(at + 8, little)
      if (length === 0 || start + length > bytes.length) continue
      entries.set(view.getUint16(at, little), { type, count: values, at: start })
    }
    const numbers = (tag: number) => {
      const entry = entries.get(tag)
      if (!entry || entry.count > mostValues) return []
      const { type, at } = entry
      return Array.from({ length: entry.count }, (_, i) => valueAt(view, type, at + i * sizes[type], little))
    }
    directories.push({
      has: (tag) => entries.has(tag),
      numbers,
      bytes(tag) {
        const entry = entries.get(tag)
        return entry && bytes.subarray(entry.at, entry.at + entry.count * sizes[entry.type])
      },
      text(tag) {
        const entry = entries.get(tag)
        if (!entry || entry.type !== 2) return undefined
        const text = new TextDecoder().decode(bytes.subarray(entry.at, entry.at + entry.count))
        return text.split('\0')[0].trim() || undefined
      },
    })
    waiting.push(...subDirectoryTags.flatMap(numbers), view.getUint32(offset + 2 + count * 12, little))
  }
  return directories
}
