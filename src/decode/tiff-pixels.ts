// Pixels of a plain TIFF file: grey or red, green and blue, 8 or 16 bits, strips or tiles, packed in the usual ways. What has
// another meaning is refused by name, because geotiff would hand its numbers over all the same.
import { fromArrayBuffer } from 'geotiff'
import type { TiffDirectory } from './tiff-directories.ts'

export interface TiffPixels {
  readonly width: number
  readonly height: number
  readonly bits: 8 | 16
  /** Encoded codes, `channels` a pixel. */
  readonly codes: Uint8Array | Uint16Array
  readonly channels: 1 | 3
  /** Whether 0 is white. */
  readonly inverted: boolean
  readonly warnings: readonly string[]
}

/** Thrown for a picture of a kind that is not read; the message names it. */
export class UnreadTiff extends Error {}

/** PhotometricInterpretation (262) of pictures that are something else, and Compression (259) that is not unpacked here. */
const otherMeanings: Record<number, string> = {
  3: 'a palette of colours',
  4: 'a mask of transparency',
  5: 'printing inks (CMYK)',
  6: 'luminance and chroma (YCbCr)',
  8: 'CIE Lab colours',
  9: 'CIE Lab colours',
  10: 'CIE Lab colours',
}
/** No packing in use makes less than a thousandth of a picture: that of deflate ends at 1 : 1032. */
const mostUnpacked = 1100
const packings = [1, 5, 8, 32946, 32773]
/** Colour filter array and linear raw; DNGVersion. */
const rawMeanings = [32803, 34892]
const dngVersion = 50706

const meaningOf = (directory: TiffDirectory) => directory.numbers(262)[0]
const packingOf = (directory: TiffDirectory) => directory.numbers(259)[0] ?? 1

/** What keeps a directory from being read as a plain picture, or null. */
function whyNot(directory: TiffDirectory): string | null {
  const meaning = meaningOf(directory)
  const bits = directory.numbers(258)
  const format = directory.numbers(339)[0] ?? 1
  const samples = directory.numbers(277)[0] ?? 1
  if (![0, 1, 2].includes(meaning)) return otherMeanings[meaning] ?? 'a picture of unknown meaning'
  if (!packings.includes(packingOf(directory)))
    return `a TIFF packed in an uncommon way (compression ${packingOf(directory)})`
  if (format !== 1) return 'floating-point or signed numbers'
  if (!bits.every((each) => each === bits[0]) || ![8, 16].includes(bits[0])) return `${bits[0] ?? 1} bits per channel`
  if (samples < (meaning === 2 ? 3 : 1)) return 'fewer channels than its colours need'
  return null
}

/** Strips and tiles that fit the file: its sizes are trusted before a byte is unpacked, and false ones would cost hours. */
function holdsItsSizes({ numbers }: TiffDirectory, fileBytes: number): boolean {
  const one = (tag: number, otherwise: number) => numbers(tag)[0] ?? otherwise
  const [width, height] = [one(256, 0), one(257, 0)]
  const bytesPerPixel = (one(277, 1) * one(258, 1)) / 8
  const parts = [
    [width, height],
    [width, Math.min(one(278, height), height)],
    [one(322, 1), one(323, 1)],
  ]
  return parts.every(([across, down]) => {
    const area = across * down
    return across >= 1 && down >= 1 && area * bytesPerPixel <= fileBytes * mostUnpacked
  })
}

/** Whether a file is to be read as a plain TIFF before any attempt to read it as raw: many raw files are built like one. */
export function isPlainTiff(fileName: string, directories: readonly TiffDirectory[]): boolean {
  const [first] = directories
  return isTiffPicture(fileName, directories) && whyNot(first) === null && !((first.numbers(254)[0] ?? 0) & 1)
}

/** Whether a file calls itself a TIFF and holds no sensor data that its tags tell of. */
export function isTiffPicture(fileName: string, directories: readonly TiffDirectory[]): boolean {
  const holdsRaw = directories.some((one) => one.has(dngVersion) || rawMeanings.includes(meaningOf(one)))
  return /\.tiff?$/i.test(fileName) && directories.length > 0 && directories[0].has(262) && !holdsRaw
}

/** The codes without those beyond the colours; premultiplied ones only where nothing is transparent. */
function withoutExtras(codes: TiffPixels['codes'], samples: number, channels: number, isPremultiplied: boolean) {
  if (samples === channels) return codes
  const most = codes instanceof Uint8Array ? 255 : 65535
  const kept = new (codes instanceof Uint8Array ? Uint8Array : Uint16Array)((codes.length / samples) * channels)
  for (let from = 0, to = 0; from < codes.length; from += samples) {
    if (isPremultiplied && codes[from + channels] < most)
      throw new UnreadTiff('colours already mixed with transparency')
    for (let channel = 0; channel < channels; channel++) kept[to++] = codes[from + channel]
  }
  return kept
}

/** The first picture of a TIFF. @throws UnreadTiff, RangeError where the file is cut short, or what geotiff throws on damage */
export async function tiffPixels(
  bytes: Uint8Array<ArrayBuffer>,
  [directory]: readonly TiffDirectory[],
): Promise<TiffPixels> {
  const reason = whyNot(directory)
  if (reason !== null) throw new UnreadTiff(reason)
  if (!holdsItsSizes(directory, bytes.length)) throw new RangeError('The file is too short for the size it states.')
  const image = await (
    await fromArrayBuffer(bytes.buffer.slice(bytes.byteOffset, bytes.byteOffset + bytes.length))
  ).getImage(0)
  const samples = image.getSamplesPerPixel()
  const read = (await image.readRasters({ interleave: true })) as unknown as TiffPixels['codes']
  const channels = meaningOf(directory) === 2 ? 3 : 1
  const extra = directory.numbers(338)[0]
  const warnings = samples > channels && extra !== 0 ? ['Transparency in the file is left out.'] : []
  return {
    width: image.getWidth(),
    height: image.getHeight(),
    bits: read instanceof Uint8Array ? 8 : 16,
    codes: withoutExtras(read, samples, channels, extra === 1),
    channels,
    inverted: meaningOf(directory) === 0,
    warnings,
  }
}
