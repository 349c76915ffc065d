// A digital negative (DNG 1.4) around one mosaic: 16-bit uncompressed, because noise hardly compresses and plain rows open
// three times faster than lossless JPEG. Preview first, raw picture in a nested directory, as cameras lay it out.
import type { Size } from '../paint/scene.ts'
import type { Body } from '../sensor/body.ts'
import { type Exposure, fullScaleElectrons } from '../sensor/expose.ts'
import { type Field, writeTiff } from './tiff.ts'

export interface Shot {
  readonly description: string
  readonly lens: string
  /** Exposure time as a fraction of a second. */
  readonly exposureTime: readonly [number, number]
  readonly aperture: number
  readonly focalLengthMm: number
  /** Local camera time, `YYYY:MM:DD HH:MM:SS`. */
  readonly takenAt: string
}

/** A full mosaic in sensor orientation: the `picture` with the body's masked border above and left of it. */
export interface Mosaic {
  readonly codes: Uint16Array
  readonly raw: Size
  readonly picture: Size
}

export interface PreviewJpeg {
  readonly bytes: Uint8Array
  readonly width: number
  readonly height: number
}

/** Rows and columns at each edge of the sensor picture that the default crop leaves out. */
const cropMargin = 4

const short = (tag: number, ...values: number[]): Field => ({ tag, type: 'short', values })
const long = (tag: number, ...values: number[]): Field => ({ tag, type: 'long', values })
const byte = (tag: number, ...values: number[]): Field => ({ tag, type: 'byte', values })
const text = (tag: number, value: string): Field => ({ tag, type: 'ascii', text: value })
const fraction = (v: number): readonly [number, number] => [Math.round(v * 10000), 10000]

function rawDirectory({ codes, raw, picture }: Mosaic, body: Body, exposure: Exposure): Field[] {
  const { top, left } = body.border
  const full = fullScaleElectrons(body, exposure)
  return [
    long(254, 0),
    long(256, raw.width),
    long(257, raw.height),
    short(258, 16),
    short(259, 1),
    short(262, 32803),
    { tag: 273, type: 'data', bytes: new Uint8Array(codes.buffer, codes.byteOffset, codes.byteLength) },
    short(277, 1),
    long(278, raw.height),
    long(279, codes.byteLength),
    short(284, 1),
    short(33421, 2, 2),
    byte(33422, ...[...exposure.phase].map((letter) => 'RGB'.indexOf(letter))),
    byte(50710, 0, 1, 2),
    short(50711, 1),
    short(50713, 2, 2),
    long(50714, ...exposure.black),
    long(50717, body.white),
    long(50719, cropMargin, cropMargin),
    long(50720, picture.width - 2 * cropMargin, picture.height - 2 * cropMargin),
    long(50829, top, left, top + picture.height, left + picture.width),
    { tag: 51041, type: 'double', values: [1 / full, (body.readNoiseElectrons / full) ** 2] },
  ]
}

/** The file's bytes; `preview` is in sensor orientation like the mosaic. */
export function writeDng(
  mosaic: Mosaic,
  body: Body,
  exposure: Exposure,
  shot: Shot,
  preview: PreviewJpeg,
): Uint8Array<ArrayBuffer> {
  const exif: Field[] = [
    { tag: 33434, type: 'rational', values: [shot.exposureTime] },
    { tag: 33437, type: 'rational', values: [fraction(shot.aperture)] },
    short(34855, exposure.iso),
    { tag: 36864, type: 'undefined', values: [0x30, 0x32, 0x33, 0x30] },
    text(36867, shot.takenAt),
    { tag: 37386, type: 'rational', values: [fraction(shot.focalLengthMm)] },
    text(42036, shot.lens),
  ]
  return writeTiff([
    long(254, 1),
    long(256, preview.width),
    long(257, preview.height),
    short(258, 8, 8, 8),
    short(259, 7),
    short(262, 6),
    text(270, shot.description),
    text(271, body.make),
    text(272, body.model),
    { tag: 273, type: 'data', bytes: preview.bytes },
    short(274, exposure.orientation),
    short(277, 3),
    long(278, preview.height),
    long(279, preview.bytes.length),
    short(284, 1),
    text(305, 'Heron Mere demo roll'),
    text(306, shot.takenAt),
    { tag: 330, type: 'directory', directory: rawDirectory(mosaic, body, exposure) },
    { tag: 34665, type: 'directory', directory: exif },
    byte(50706, 1, 4, 0, 0),
    byte(50707, 1, 1, 0, 0),
    text(50708, `${body.make} ${body.model}`),
    { tag: 50721, type: 'srational', values: body.colourMatrix.map(fraction) },
    { tag: 50728, type: 'rational', values: body.daylightNeutral.map(fraction) },
    short(50778, 21),
  ])
}
