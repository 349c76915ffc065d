// A baseline TIFF 6.0 with 8 or 16 bits a sample, packed strips, profile and EXIF. Strips are written as they come and the
// directory at the end, so that memory holds a few strips whatever the size of the picture.
import { type ExifRequest, exifDirectory } from './exif.ts'
import type { PackStrip } from './pack-strip.ts'
import { type BitDepth, type FinishedPicture, pictureBytes } from './picture-strip.ts'
import type { Sink } from './sink.ts'
import { type Directory, encodeDirectory, type EntryValue, tiffHeader } from './tiff-directory.ts'

/** Offsets are 32 bits; what packing adds to data that does not shrink stays below a thousandth (RFC 1950, RFC 1951). */
const largestBytes = 2 ** 32 / 1.001

/** Rows of a strip: some megabytes at 16 bits, so that packing runs side by side without holding much (our choice). */
const rowsPerStrip = 128

/** Dots per inch stated where nobody asked for a print size; common practice, no source. */
const dotsPerInch = 300

export interface TiffRequest extends Omit<ExifRequest, 'alsoExif'> {
  readonly picture: FinishedPicture
  readonly bits: BitDepth
  readonly profile: Uint8Array
  readonly sink: Sink
  readonly packStrip: PackStrip
  /** Strips packed at the same time. */
  readonly packers: number
  readonly signal: AbortSignal
  onProgress(fraction: number): void
}

interface WrittenStrips {
  readonly offsets: number[]
  readonly lengths: number[]
  /** Length of the file so far. */
  readonly end: number
}

/** @throws RangeError where a picture of this size cannot be a TIFF file. */
export function refuseLargeTiff(picture: FinishedPicture, bits: BitDepth): void {
  if (pictureBytes(picture, bits) <= largestBytes) return
  throw new RangeError(
    `A picture of ${picture.width} × ${picture.height} pixels at ${bits} bits is larger than a TIFF file can be (4 GiB): ` +
      (bits === 16 ? 'export it smaller, or at 8 bits.' : 'export it smaller.'),
  )
}

async function writeStrips(
  { picture, bits, sink, packStrip, packers, signal, onProgress }: TiffRequest,
  start: number,
) {
  const written: WrittenStrips & { end: number } = { offsets: [], lengths: [], end: start }
  const packing: Promise<Uint8Array<ArrayBuffer>>[] = []
  const strips = Math.ceil(picture.height / rowsPerStrip)

  const writeOldest = async () => {
    const bytes = await packing.shift()!
    signal.throwIfAborted()
    await sink.append(bytes)
    // Strips start at even offsets: readers of old ask for it.
    const padding = bytes.length & 1
    if (padding) await sink.append(new Uint8Array(1))
    written.offsets.push(written.end)
    written.lengths.push(bytes.length)
    written.end += bytes.length + padding
    onProgress(written.offsets.length / strips)
  }

  for await (const strip of picture.renderStrips({ bits, rowsPerStrip, signal })) {
    const packed = packStrip(strip.samples, picture.width * 3)
    // A failure surfaces when its turn to be written comes; until then it must not count as unhandled.
    packed.catch(() => undefined)
    packing.push(packed)
    if (packing.length >= packers) await writeOldest()
  }
  while (packing.length > 0) await writeOldest()
  if (written.offsets.length !== strips)
    throw new Error(`The picture ended after ${written.offsets.length} of ${strips} strips.`)
  return written
}

function pictureDirectory(request: TiffRequest, { offsets, lengths }: WrittenStrips): Directory {
  const { picture, bits, profile } = request
  const short = (...values: number[]): EntryValue => ({ type: 'short', values })
  const long = (values: number[]): EntryValue => ({ type: 'long', values })
  const resolution: EntryValue = { type: 'rational', values: [[dotsPerInch, 1]] }
  return new Map<number, EntryValue>([
    ...exifDirectory(request),
    [254, long([0])],
    [256, long([picture.width])],
    [257, long([picture.height])],
    [258, short(bits, bits, bits)],
    [259, short(8)],
    [262, short(2)],
    [273, long(offsets)],
    [274, short(1)],
    [277, short(3)],
    [278, long([rowsPerStrip])],
    [279, long(lengths)],
    [282, resolution],
    [283, resolution],
    [284, short(1)],
    [296, short(2)],
    [317, short(2)],
    [339, short(1, 1, 1)],
    [34675, { type: 'undefined', values: profile }],
  ])
}

/** Writes the whole file into the sink, up to but without its `finish`. */
export async function writeTiff(request: TiffRequest): Promise<void> {
  refuseLargeTiff(request.picture, request.bits)
  const { sink } = request
  const unfinished = tiffHeader(0)
  await sink.append(unfinished)
  const written = await writeStrips(request, unfinished.length)
  await sink.append(encodeDirectory(pictureDirectory(request, written), written.end))
  await sink.replace(0, tiffHeader(written.end))
}
