// Bytes of a file to a frame: the same code in the browser's worker and in Node. Raw files are decoded at once, the fingerprint
// is worked out meanwhile; what was developed before goes its own way.
import type { Frame } from '../frame/frame.ts'
import { frameCells, makeFrameFacts } from '../frame/frame-facts.ts'
import { estimateNoise } from '../frame/noise-model.ts'
import { makeOverview } from '../frame/overview.ts'
import { cameraToXyz, daylightNeutral } from './camera-matrix.ts'
import { DecodeError } from './decode-error.ts'
import { decodeJpeg, decodeTiff, isJpeg } from './decode-developed.ts'
import { dngNoise } from './dng-layout.ts'
import { exposureMetadata } from './exposure-metadata.ts'
import type { LibRaw, LibRawFile } from './libraw.ts'
import { type RawSource, withOpenedFile } from './opened-file.ts'
import { probeSettings } from './probe-layout.ts'
import { assertPicture, readSensor } from './read-sensor.ts'
import { readTiffDirectories, type TiffDirectory } from './tiff-directories.ts'
import { isPlainTiff, isTiffPicture } from './tiff-pixels.ts'

export interface DecodeOrder {
  readonly fileName: string
  readonly bytes: Uint8Array<ArrayBuffer>
  /** Called at once with the JPEG that the camera embedded, if any; its EXIF carries the orientation. */
  readonly onPreview?: (jpeg: Uint8Array<ArrayBuffer>) => void
}

/** SHA-256 in hexadecimal. */
async function fingerprintOf(bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('')
}

/** The embedded JPEG, or null: a picture without one, or with a broken one, opens all the same. */
function embeddedJpeg(file: LibRawFile): Uint8Array<ArrayBuffer> | null {
  try {
    const preview = file.thumbnailData()
    return preview?.format === 'jpeg' ? preview.data : null
  } catch {
    return null
  }
}

function damageWarnings(messages: readonly string[]): string[] {
  if (messages.length === 0) return []
  const words = [...new Set(messages)].join('; ')
  return [`The file is damaged: parts of the picture may be wrong (the decoder says: ${words}).`]
}

function decodeRaw(source: RawSource, directories: readonly TiffDirectory[], onPreview: DecodeOrder['onPreview']) {
  const { libraw, fileName } = source
  libraw.takeMessages()
  return withOpenedFile(source, probeSettings(0, 0), (opened) => {
    const preview = onPreview && embeddedJpeg(opened.file)
    if (preview) onPreview(preview)
    libraw.takeMessages()
    const { sensor, warnings } = readSensor(source, opened, directories)
    assertPicture(fileName, sensor)
    const metadata = exposureMetadata(opened.metadata, directories)
    const overview = makeOverview(sensor)
    const noise = dngNoise(directories) ?? estimateNoise(sensor, metadata.iso)
    const matrix = cameraToXyz(opened.metadata)
    const cells = frameCells(sensor, overview, noise)
    const daylight = matrix ? daylightNeutral(opened.metadata) : undefined
    const facts = makeFrameFacts(sensor, overview, cells, noise, matrix, daylight)
    const damage = damageWarnings(libraw.takeMessages())
    return { sensor, overview, cells, facts, metadata, warnings: [...warnings, ...damage] }
  })
}

/** Raw data first, as some cameras hide it in a JPEG; a plain TIFF is known by its tags. */
async function decodeAny(source: RawSource, onPreview: DecodeOrder['onPreview']) {
  const { fileName, bytes } = source
  const directories = readTiffDirectories(bytes)
  if (isPlainTiff(fileName, directories)) return decodeTiff(source, directories)
  try {
    return decodeRaw(source, directories, onPreview)
  } catch (thrown) {
    if (isJpeg(bytes)) return decodeJpeg(source)
    if (isTiffPicture(fileName, directories)) return decodeTiff(source, directories)
    throw thrown
  }
}

/** Decodes one file. @throws DecodeError with a sentence for people */
export async function decodeFrame(libraw: LibRaw, order: DecodeOrder): Promise<Frame> {
  const { fileName, bytes, onPreview } = order
  if (bytes.length === 0) throw new DecodeError(fileName, { kind: 'empty' })
  const fingerprint = fingerprintOf(bytes)
  const frame = await decodeAny({ libraw, fileName, bytes }, onPreview)
  return { fileName, fingerprint: await fingerprint, ...frame }
}
