// A small writer of DNG files for tests (TIFF 6.0 and DNG 1.4, little-endian): one raw image, every tag the tests turn.
// Not a general writer: the raw image is the first directory, a preview JPEG the only sub-directory.

export interface SyntheticDng {
  /** Whole raw area, masked borders included. */
  readonly width: number
  readonly height: number
  /** Row-major codes; three interleaved samples per pixel for a linear file. */
  readonly codes: Uint16Array
  readonly samplesPerPixel?: 1 | 3
  /** Colours relative to the active area; none for one channel and for linear files. */
  readonly cfa?: { readonly columns: number; readonly rows: number; readonly colours: readonly number[] }
  /** Relative to the active area; with three samples per pixel, three codes for each position. */
  readonly black?: { readonly columns: number; readonly rows: number; readonly codes: readonly number[] }
  readonly white?: number
  /** Top, left, bottom, right. */
  readonly activeArea?: readonly [number, number, number, number]
  /** Left, top, width, height within the active area. */
  readonly crop?: readonly [number, number, number, number]
  /** EXIF orientation 1…8. */
  readonly orientation?: number
  readonly preview?: Uint8Array
  /** Bytes of the raw image instead of the codes, with their TIFF compression. */
  readonly packed?: { readonly compression: number; readonly bytes: Uint8Array }
  /** Tags that replace or extend those above. */
  readonly tags?: readonly DngTag[]
}

/** `type`: 1 byte, 2 text, 3 short, 4 long, 5 rational, 10 signed rational; rationals as numbers. */
type DngTag = readonly [tag: number, type: 1 | 2 | 3 | 4 | 5 | 10, values: readonly number[] | string]

const bytesPerValue = { 1: 1, 2: 1, 3: 2, 4: 4, 5: 8, 10: 8 } as const
/** Denominator of every rational written. */
const denominator = 10000

/** A directory whose long values lie right behind it, at `offset` of the file. */
function directory(tags: readonly DngTag[], offset: number): Uint8Array {
  const sorted = [...new Map(tags.map((tag) => [tag[0], tag])).values()].sort((a, b) => a[0] - b[0])
  const bodies = sorted.map(([, type, values]) => {
    if (typeof values === 'string') return new TextEncoder().encode(`${values}\0`)
    const bytes = new Uint8Array(values.length * bytesPerValue[type])
    const view = new DataView(bytes.buffer)
    values.forEach((value, i) => {
      if (type === 1) view.setUint8(i, value)
      else if (type === 3) view.setUint16(i * 2, value, true)
      else if (type === 4) view.setUint32(i * 4, value, true)
      else {
        view.setInt32(i * 8, Math.round(value * denominator), true)
        view.setInt32(i * 8 + 4, denominator, true)
      }
    })
    return bytes
  })
  const head = 2 + sorted.length * 12 + 4
  const bytes = new Uint8Array(head + bodies.reduce((sum, body) => sum + (body.length > 4 ? body.length + 1 : 0), 0))
  const view = new DataView(bytes.buffer)
  view.setUint16(0, sorted.length, true)
  let end = head
  sorted.forEach(([tag, type], i) => {
    const body = bodies[i]
    const at = 2 + i * 12
    view.setUint16(at, tag, true)
    view.setUint16(at + 2, type, true)
    view.setUint32(at + 4, body.length / bytesPerValue[type], true)
    if (body.length <= 4) return bytes.set(body, at + 8)
    view.setUint32(at + 8, offset + end, true)
    bytes.set(body, end)
    end += body.length + (body.length % 2)
  })
  return bytes
}

/** The bytes of a DNG file. */
export function writeDng(dng: SyntheticDng): Uint8Array<ArrayBuffer> {
  const samples = dng.samplesPerPixel ?? 1
  const { cfa, black, crop, preview } = dng
  const data = dng.packed?.bytes ?? new Uint8Array(dng.codes.buffer, dng.codes.byteOffset, dng.codes.byteLength)
  const shorts = (value: number) => Array.from({ length: samples }, () => value)
  const tags = (dataAt: number, previewAt: number): DngTag[] => [
    [254, 4, [0]],
    [256, 4, [dng.width]],
    [257, 4, [dng.height]],
    [258, 3, shorts(16)],
    [259, 3, [dng.packed?.compression ?? 1]],
    [262, 3, [cfa ? 32803 : 34892]],
    [271, 2, 'Rimeleaf'],
    [272, 2, 'Synthetic'],
    [273, 4, [dataAt]],
    [274, 3, [dng.orientation ?? 1]],
    [277, 3, [samples]],
    [278, 4, [dng.height]],
    [279, 4, [data.length]],
    [284, 3, [1]],
    ...(preview ? [[330, 4, [previewAt]] as const] : []),
    ...(cfa
      ? ([
          [33421, 3, [cfa.rows, cfa.columns]],
          [33422, 1, cfa.colours],
        ] as const)
      : []),
    [50706, 1, [1, 4, 0, 0]],
    [50707, 1, [1, 1, 0, 0]],
    [50708, 2, 'Rimeleaf Synthetic'],
    ...(black
      ? ([
          [50713, 3, [black.rows, black.columns]],
          [50714, 5, black.codes],
        ] as const)
      : []),
    [50717, 4, shorts(dng.white ?? 65535)],
    ...(crop
      ? ([
          [50719, 4, crop.slice(0, 2)],
          [50720, 4, crop.slice(2)],
        ] as const)
      : []),
    [50721, 10, [3.2406, -1.5372, -0.4986, -0.9689, 1.8758, 0.0415, 0.0557, -0.204, 1.057].slice(0, 9)],
    [50728, 5, [1, 1, 1]],
    [50778, 3, [21]],
    ...(dng.activeArea ? [[50829, 4, dng.activeArea] as const] : []),
    ...(dng.tags ?? []),
  ]
  const header = new Uint8Array([0x49, 0x49, 42, 0, 8, 0, 0, 0])
  const previewAt = 8 + directory(tags(0, 0), 8).length
  const previewTags = (at: number): DngTag[] => [
    [254, 4, [1]],
    [259, 3, [7]],
    [262, 3, [6]],
    [256, 4, [16]],
    [257, 4, [8]],
    [258, 3, [8, 8, 8]],
    [277, 3, [3]],
    [273, 4, [at]],
    [279, 4, [preview?.length ?? 0]],
  ]
  const jpegAt = previewAt + (preview ? directory(previewTags(0), previewAt).length : 0)
  const dataAt = (jpegAt + (preview?.length ?? 0) + 1) & ~1
  const file = new Uint8Array(dataAt + data.length)
  file.set(header)
  file.set(directory(tags(dataAt, previewAt), 8), 8)
  if (preview) {
    file.set(directory(previewTags(jpegAt), previewAt), previewAt)
    file.set(preview, jpegAt)
  }
  file.set(data, dataAt)
  return file
}
