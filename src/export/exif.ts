// What a finished picture says about its exposure, as EXIF directories for TIFF and JPEG alike.
// Tag numbers: CIPA DC-008 (EXIF 2.32). A location leaves the machine only where the photographer keeps it.
import type { ExposureMetadata } from '../frame/frame.ts'
import { toRational } from './rational.ts'
import type { Directory, EntryValue } from './tiff-directory.ts'

/** Largest ISO the 16-bit tag holds; above it the tag is left out. */
const largestShort = 65535

const text = (value: string | undefined): EntryValue | undefined =>
  value?.trim() ? { type: 'ascii', text: value.trim() } : undefined

const short = (value: number): EntryValue => ({ type: 'short', values: [value] })

const fraction = (value: number | undefined): EntryValue | undefined =>
  value !== undefined && value > 0 && value < 2 ** 32 ? { type: 'rational', values: [toRational(value)] } : undefined

const letters = (value: string): EntryValue => ({ type: 'undefined', values: new TextEncoder().encode(value) })

function directory(entries: readonly (readonly [tag: number, value: EntryValue | undefined])[]): Directory {
  return new Map(entries.filter((entry): entry is [number, EntryValue] => entry[1] !== undefined))
}

/** Degrees, minutes and seconds of the unsigned angle. */
function degrees(angleDeg: number): EntryValue {
  const angle = Math.abs(angleDeg)
  const minutes = (angle % 1) * 60
  return {
    type: 'rational',
    values: [[Math.floor(angle), 1], [Math.floor(minutes), 1], toRational((minutes % 1) * 60)],
  }
}

function location({ latitudeDeg, longitudeDeg, altitudeM }: NonNullable<ExposureMetadata['gps']>): Directory {
  const hasAltitude = altitudeM !== undefined
  return directory([
    [0x00, { type: 'bytes', values: Uint8Array.of(2, 3, 0, 0) }],
    [0x01, text(latitudeDeg < 0 ? 'S' : 'N')],
    [0x02, degrees(latitudeDeg)],
    [0x03, text(longitudeDeg < 0 ? 'W' : 'E')],
    [0x04, degrees(longitudeDeg)],
    [0x05, hasAltitude ? { type: 'bytes', values: Uint8Array.of(altitudeM < 0 ? 1 : 0) } : undefined],
    [0x06, hasAltitude ? { type: 'rational', values: [toRational(Math.abs(altitudeM))] } : undefined],
  ])
}

export interface ExifRequest {
  readonly metadata: ExposureMetadata
  readonly keepLocation: boolean
  /** Name and version of the writing program. */
  readonly software: string
  readonly isSrgb: boolean
  /** Entries of the EXIF directory that only one file format takes. */
  readonly alsoExif?: Directory
}

/** Entries of the first directory, the EXIF and, where kept, the GPS directory below it included. Unknown fields are absent. */
export function exifDirectory({ metadata, keepLocation, software, isSrgb, alsoExif }: ExifRequest): Directory {
  const iso = metadata.iso && metadata.iso > 0 && metadata.iso <= largestShort ? Math.round(metadata.iso) : undefined
  const exif = directory([
    [0x829a, fraction(metadata.exposureTimeS)],
    [0x829d, fraction(metadata.apertureF)],
    [0x8827, iso === undefined ? undefined : short(iso)],
    [0x9000, letters('0232')],
    [0x9003, text(metadata.takenAt)],
    [0x9004, text(metadata.takenAt)],
    [0x920a, fraction(metadata.focalLengthMm)],
    [0xa000, letters('0100')],
    [0xa001, short(isSrgb ? 1 : 65535)],
    [0xa434, text(metadata.lens)],
    ...(alsoExif ?? []),
  ])
  const gps = keepLocation && metadata.gps ? location(metadata.gps) : undefined
  return directory([
    [0x010e, text(metadata.description)],
    [0x010f, text(metadata.make)],
    [0x0110, text(metadata.model)],
    [0x0131, text(software)],
    [0x013b, text(metadata.artist)],
    [0x8298, text(metadata.copyright)],
    [0x8769, { type: 'directory', entries: exif }],
    [0x8825, gps && { type: 'directory', entries: gps }],
  ])
}
