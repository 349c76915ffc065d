// A JPEG without colour subsampling, with profile and EXIF. The encoder takes the whole picture at once, four bytes a
// pixel, and needs about 25 bytes a pixel while it works: the reason for the limit in size.
import encode from '@jsquash/jpeg/encode.js'
import { type ExifRequest, exifDirectory } from './exif.ts'
import { describedJpeg } from './jpeg-segments.ts'
import type { FinishedPicture } from './picture-strip.ts'
import type { Sink } from './sink.ts'
import { type Directory, encodeDirectory, type EntryValue, tiffHeader } from './tiff-directory.ts'

/** The encoder's memory ends at 2 GiB (measured: 1.5 GB at 60 megapixels). */
const largestPixels = 80e6
/** Longest side of the encoder, from memory; the format itself ends at 65535. */
const largestSide = 65500
const rowsPerStrip = 256
/** Share of the time that rendering takes, for the progress bar (measured at 24 megapixels, roughly). */
const renderingShare = 0.5
/** Common practice, no source. */
const dotsPerInch = 300

export interface JpegRequest extends Omit<ExifRequest, 'alsoExif'> {
  readonly picture: FinishedPicture
  /** 1…100. */
  readonly quality: number
  readonly profile: Uint8Array
  readonly sink: Sink
  readonly signal: AbortSignal
  onProgress(fraction: number): void
}

/** @throws RangeError where a picture of this size cannot be encoded. */
export function refuseLargeJpeg({ width, height }: FinishedPicture): void {
  if (Math.max(width, height) <= largestSide && width * height <= largestPixels) return
  throw new RangeError(
    `A picture of ${width} × ${height} pixels is too large for a JPEG here (${largestPixels / 1e6} megapixels, ` +
      `${largestSide} pixels a side): export it smaller, or as TIFF.`,
  )
}

async function wholePicture({ picture, signal, onProgress }: JpegRequest): Promise<Uint8ClampedArray<ArrayBuffer>> {
  const { width, height } = picture
  const rgba = new Uint8ClampedArray(width * height * 4).fill(255)
  for await (const { top, rows, samples } of picture.renderStrips({ bits: 8, rowsPerStrip, signal })) {
    signal.throwIfAborted()
    for (let from = 0, to = top * width * 4; from < samples.length; from += 3, to += 4) {
      rgba[to] = samples[from]
      rgba[to + 1] = samples[from + 1]
      rgba[to + 2] = samples[from + 2]
    }
    onProgress(((top + rows) / height) * renderingShare)
  }
  return rgba
}

/** The TIFF structure inside the EXIF segment, with the entries that JPEG files must carry (CIPA DC-008 tables 20, 21). */
function exifBlock(request: JpegRequest): Uint8Array {
  const { width, height } = request.picture
  const short = (value: number): EntryValue => ({ type: 'short', values: [value] })
  const resolution: EntryValue = { type: 'rational', values: [[dotsPerInch, 1]] }
  const alsoExif: Directory = new Map<number, EntryValue>([
    [0x9101, { type: 'undefined', values: Uint8Array.of(1, 2, 3, 0) }],
    [0xa002, { type: 'long', values: [width] }],
    [0xa003, { type: 'long', values: [height] }],
  ])
  const directory = new Map<number, EntryValue>([
    ...exifDirectory({ ...request, alsoExif }),
    [0x011a, resolution],
    [0x011b, resolution],
    [0x0128, short(2)],
    [0x0213, short(1)],
  ])
  const header = tiffHeader(8)
  return Uint8Array.of(...header, ...encodeDirectory(directory, header.length))
}

/** Writes the whole file into the sink, up to but without its `finish`. */
export async function writeJpeg(request: JpegRequest): Promise<void> {
  const { picture, quality, profile, sink, signal } = request
  refuseLargeJpeg(picture)
  const { width, height } = picture
  const data = await wholePicture(request)
  signal.throwIfAborted()
  const image = { data, width, height, colorSpace: 'srgb' as const }
  // Sequential: half the time of a progressive file for 7 % more bytes. chroma_subsample 1 is 4:4:4.
  const options = { quality, progressive: false, auto_subsample: false, chroma_subsample: 1 }
  const encoded = new Uint8Array(await encode(image, options))
  for (const part of describedJpeg(encoded, exifBlock(request), profile)) {
    signal.throwIfAborted()
    await sink.append(part as Uint8Array<ArrayBuffer>)
  }
  request.onProgress(1)
}
