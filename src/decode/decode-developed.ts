// Bytes of a JPEG or TIFF to a frame: a photograph that was developed before, made linear again as far as its file tells how.
import { wordsOf } from '../text/thrown.ts'
import { frameCells, makeFrameFacts } from '../frame/frame-facts.ts'
import type { Developed, Frame } from '../frame/frame.ts'
import { makeOverview } from '../frame/overview.ts'
import { isOwnSoftware } from '../frame/software-name.ts'
import type { Orientation } from '../sensor/orientation.ts'
import { DecodeError, type DecodeFailure } from './decode-error.ts'
import { developedNeutral } from './developed-neutral.ts'
import { developedNoise } from './developed-noise.ts'
import { exifMetadata } from './exif-metadata.ts'
import { readJpegHead } from './jpeg-head.ts'
import { jpegPixels } from './jpeg-pixels.ts'
import { type EncodedPixels, linearise } from './linearise.ts'
import { assertPicture } from './read-sensor.ts'
import { statedSpace } from './stated-space.ts'
import { readTiffDirectories, type TiffDirectory } from './tiff-directories.ts'
import { tiffPixels, UnreadTiff } from './tiff-pixels.ts'

interface File {
  readonly fileName: string
  readonly bytes: Uint8Array<ArrayBuffer>
}
type DecodedFrame = Omit<Frame, 'fileName' | 'fingerprint'>

interface Found {
  readonly pixels: EncodedPixels
  readonly format: Developed['format']
  readonly profile: Uint8Array | null
  /** As in `Coding`. */
  readonly chromaQuantiser: number | null
  readonly directories: readonly TiffDirectory[]
  readonly warnings: readonly string[]
}

const iccTag = 34675
const orientationTag = 274
const softwareTag = 305

/** libjpeg’s words where the file ends before the picture does. */
const endsEarly = /premature end|no image/i
const isMemory = (words: string) => /memory|allocation|array length/i.test(words)

/** Why the JPEG codec gave no picture, from its words. */
function failureKind(words: string) {
  if (isMemory(words)) return 'memory'
  if (/wasm/i.test(words)) return 'no decoder'
  return endsEarly.test(words) ? 'truncated' : 'damaged'
}

function frameOf(
  { fileName }: File,
  { pixels, format, profile, chromaQuantiser, directories, warnings }: Found,
): DecodedFrame {
  const stated = statedSpace(profile, directories)
  const { name, curves, toXyz } = stated.space
  const orientation = directories[0]?.numbers(orientationTag)[0] ?? 1
  const upright = (orientation >= 1 && orientation <= 8 ? orientation : 1) as Orientation
  const sensor = linearise(pixels, curves, upright)
  assertPicture(fileName, sensor)
  const metadata = exifMetadata(directories)
  const overview = makeOverview(sensor)
  const noise = developedNoise(sensor, curves[1], { bits: pixels.bits, chromaQuantiser }, metadata.iso)
  const cells = frameCells(sensor, overview, noise)
  const matrix = pixels.channels === 3 ? toXyz : null
  const found = makeFrameFacts(sensor, overview, cells, noise, matrix)
  const isFinishedHere = directories.some((directory) => isOwnSoftware(directory.text(softwareTag)))
  const referenceNeutral = developedNeutral(found.referenceNeutral, isFinishedHere)
  const facts = { ...found, referenceNeutral, developed: true }
  const developed: Developed = { format, bits: pixels.bits, space: name }
  const all = [...warnings, ...stated.warnings]
  return { sensor, overview, cells, facts, metadata, developed, warnings: all }
}

/** Whether bytes begin as a JPEG does. */
export const isJpeg = (bytes: Uint8Array) => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff

/** @throws DecodeError with a sentence for people */
export async function decodeJpeg(file: File): Promise<DecodedFrame> {
  const fail = (failure: DecodeFailure) => new DecodeError(file.fileName, failure)
  const head = readJpegHead(file.bytes)
  if (!head) throw fail({ kind: 'truncated' })
  const what = (words: string) => fail({ kind: 'unsupported picture', what: words })
  if (head.components === 4) throw what('printing inks (CMYK)')
  if (head.components !== 1 && head.components !== 3) throw what(`${head.components} channels`)
  if (!head.isCommon) throw what('a JPEG of an uncommon kind (lossless or arithmetic)')
  if (head.bits !== 8) throw what(`a JPEG with ${head.bits} bits per channel`)
  const { width, height, rgba, messages } = await jpegPixels(file.bytes).catch((thrown: unknown) => {
    const words = wordsOf(thrown)
    throw fail({ kind: failureKind(words) })
  })
  if (messages.some((message) => endsEarly.test(message))) throw fail({ kind: 'truncated' })
  const warnings = messages.map(
    (message) => `The file is damaged: parts of the picture may be wrong (the decoder says: ${message}).`,
  )
  const channels = head.components
  const pixels = { width, height, codes: rgba, stride: 4, channels, bits: 8, inverted: false } as const
  const directories = readTiffDirectories(head.exif)
  const { profile, chromaQuantiser } = head
  return frameOf(file, { pixels, format: 'JPEG', profile, chromaQuantiser, directories, warnings })
}

/** @throws DecodeError with a sentence for people */
export async function decodeTiff(file: File, directories: readonly TiffDirectory[]): Promise<DecodedFrame> {
  const read = await tiffPixels(file.bytes, directories).catch((thrown: unknown) => {
    const words = wordsOf(thrown)
    if (thrown instanceof UnreadTiff) throw new DecodeError(file.fileName, { kind: 'unsupported picture', what: words })
    const kind = isMemory(words) ? 'memory' : thrown instanceof RangeError ? 'truncated' : 'damaged'
    throw new DecodeError(file.fileName, { kind })
  })
  const pixels = { ...read, stride: read.channels }
  const profile = directories[0].bytes(iccTag) ?? null
  return frameOf(file, { pixels, format: 'TIFF', profile, chromaQuantiser: null, directories, warnings: read.warnings })
}
