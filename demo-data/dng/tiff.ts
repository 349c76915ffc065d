// Writes a little-endian TIFF 6.0 file from directories of tags: out-of-line values, nested directories and data blocks are
// laid out one after another, data last. Only the field types that a digital negative needs.

export type Field =
  | { readonly tag: number; readonly type: 'byte' | 'undefined'; readonly values: readonly number[] }
  | { readonly tag: number; readonly type: 'short' | 'long' | 'double'; readonly values: readonly number[] }
  | { readonly tag: number; readonly type: 'ascii'; readonly text: string }
  | {
      readonly tag: number
      readonly type: 'rational' | 'srational'
      readonly values: readonly (readonly [number, number])[]
    }
  | { readonly tag: number; readonly type: 'directory'; readonly directory: Directory }
  | { readonly tag: number; readonly type: 'data'; readonly bytes: Uint8Array }

export type Directory = readonly Field[]

const codes = {
  byte: 1,
  ascii: 2,
  short: 3,
  long: 4,
  rational: 5,
  undefined: 7,
  srational: 10,
  double: 12,
  directory: 4,
  data: 4,
}
const sizes = {
  byte: 1,
  ascii: 1,
  short: 2,
  long: 4,
  rational: 8,
  undefined: 1,
  srational: 8,
  double: 8,
  directory: 4,
  data: 4,
}

function count(field: Field): number {
  if (field.type === 'ascii') return field.text.length + 1
  return field.type === 'directory' || field.type === 'data' ? 1 : field.values.length
}

const even = (n: number) => (n + 1) & ~1

function directoryLength(directory: Directory): number {
  return directory.reduce((sum, field) => {
    const bytes = count(field) * sizes[field.type]
    const nested = field.type === 'directory' ? directoryLength(field.directory) : 0
    return sum + 12 + (bytes > 4 ? even(bytes) : 0) + nested
  }, 6)
}

function dataLength(directory: Directory): number {
  return directory.reduce((sum, field) => {
    if (field.type === 'data') return sum + even(field.bytes.length)
    return field.type === 'directory' ? sum + dataLength(field.directory) : sum
  }, 0)
}

function putValues(view: DataView, at: number, field: Field): void {
  switch (field.type) {
    case 'ascii':
      for (let i = 0; i < field.text.length; i++) view.setUint8(at + i, field.text.charCodeAt(i))
      break
    case 'byte':
    case 'undefined':
      field.values.forEach((value, i) => view.setUint8(at + i, value))
      break
    case 'short':
      field.values.forEach((value, i) => view.setUint16(at + i * 2, value, true))
      break
    case 'long':
      field.values.forEach((value, i) => view.setUint32(at + i * 4, value, true))
      break
    case 'double':
      field.values.forEach((value, i) => view.setFloat64(at + i * 8, value, true))
      break
    case 'rational':
    case 'srational':
      field.values.forEach((value, i) => {
        view.setInt32(at + i * 8, value[0], true)
        view.setInt32(at + i * 8 + 4, value[1], true)
      })
  }
}

/** The whole file. Tags may come in any order; ASCII text must be plain ASCII. */
export function writeTiff(root: Directory): Uint8Array<ArrayBuffer> {
  const directories = directoryLength(root)
  const bytes = new Uint8Array(8 + directories + dataLength(root))
  const view = new DataView(bytes.buffer)
  bytes.set([0x49, 0x49, 42, 0, 8, 0, 0, 0])
  let next = 8
  let data = 8 + directories
  const put = (directory: Directory): number => {
    const start = next
    const sorted = [...directory].sort((a, b) => a.tag - b.tag)
    view.setUint16(start, sorted.length, true)
    next = start + 6 + 12 * sorted.length
    sorted.forEach((field, i) => {
      const entry = start + 2 + 12 * i
      const length = count(field) * sizes[field.type]
      view.setUint16(entry, field.tag, true)
      view.setUint16(entry + 2, codes[field.type], true)
      view.setUint32(entry + 4, count(field), true)
      if (field.type === 'directory') view.setUint32(entry + 8, put(field.directory), true)
      else if (field.type === 'data') {
        view.setUint32(entry + 8, data, true)
        bytes.set(field.bytes, data)
        data += even(field.bytes.length)
      } else if (length > 4) {
        view.setUint32(entry + 8, next, true)
        putValues(view, next, field)
        next += even(length)
      } else putValues(view, entry + 8, field)
    })
    return start
  }
  put(root)
  return bytes
}
