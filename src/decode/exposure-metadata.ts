// What the camera wrote about the exposure, from LibRaw and, where the file is built like a TIFF, from its own tags.
import type { ExposureMetadata } from '../frame/frame.ts'
import type { LibRawMetadata } from './libraw.ts'
import type { TiffDirectory } from './tiff-directories.ts'

/** TIFF and EXIF tags: DateTimeOriginal and DateTime, then those whose names they bear. */
const takenTags = [36867, 306]
const makeTags = [271]
const modelTags = [272]
const copyrightTags = [33432]

/** `YYYY:MM:DD HH:MM:SS` of a time that LibRaw made from the camera's local time as if it were this machine's. */
function localTime(seconds: number): string {
  const date = new Date(seconds * 1000)
  const two = (value: number) => String(value).padStart(2, '0')
  const day = [date.getFullYear(), date.getMonth() + 1, date.getDate()].map(two).join(':')
  return `${day} ${[date.getHours(), date.getMinutes(), date.getSeconds()].map(two).join(':')}`
}

function placeOf({ gps_data: gps }: LibRawMetadata): ExposureMetadata['gps'] {
  if (!gps.gpsparsed || gps.latref === null || gps.longref === null) return undefined
  const degrees = ([d, m, s]: readonly number[], negative: boolean) => (negative ? -1 : 1) * (d + m / 60 + s / 3600)
  return {
    latitudeDeg: degrees(gps.latitude, gps.latref === 'S'),
    longitudeDeg: degrees(gps.longitude, gps.longref === 'W'),
    ...(gps.altitude === 0 ? {} : { altitudeM: gps.altref === 1 ? -gps.altitude : gps.altitude }),
  }
}

/** The fields without absent, empty and zero ones. */
export function givenFields(fields: ExposureMetadata): ExposureMetadata {
  const given = ([, value]: [string, unknown]) => {
    if (typeof value === 'number') return value > 0 && Number.isFinite(value)
    return typeof value === 'string' ? value.trim() !== '' : value !== undefined
  }
  return Object.fromEntries(Object.entries(fields).filter(given))
}

/** Absent, empty and zero fields are left out. */
export function exposureMetadata(metadata: LibRawMetadata, directories: readonly TiffDirectory[]): ExposureMetadata {
  const text = (tags: readonly number[]) =>
    tags.flatMap((tag) => directories.map((directory) => directory.text(tag))).find((value) => value !== undefined)
  const { lens } = metadata
  const fields: ExposureMetadata = {
    make: text(makeTags) ?? metadata.camera_make,
    model: text(modelTags) ?? metadata.camera_model,
    lens: lens.Lens || lens.makernotes.Lens,
    iso: metadata.iso_speed,
    exposureTimeS: metadata.shutter,
    apertureF: metadata.aperture,
    focalLengthMm: metadata.focal_len,
    takenAt: text(takenTags) ?? (metadata.timestamp > 0 ? localTime(metadata.timestamp) : undefined),
    artist: metadata.artist,
    copyright: text(copyrightTags),
    description: metadata.desc,
    gps: placeOf(metadata),
  }
  return givenFields(fields)
}
