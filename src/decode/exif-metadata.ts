// What the camera wrote into the EXIF directories of a developed file (CIPA DC-008): times as written, never moved by the zone
// of this machine.
import type { ExposureMetadata } from '../frame/frame.ts'
import { givenFields } from './exposure-metadata.ts'
import type { TiffDirectory } from './tiff-directories.ts'

/** GPS tags 2 and 4 are degrees, minutes and seconds; 1 and 3 say which half of the globe, 5 and 6 the height. */
function placeOf(directories: readonly TiffDirectory[]): ExposureMetadata['gps'] {
  const gps = directories.find((directory) => directory.numbers(2).length === 3 && directory.numbers(4).length === 3)
  if (!gps) return undefined
  const angle = (tag: number, half: string | undefined) => {
    const [degrees, minutes, seconds] = gps.numbers(tag)
    return (half === 'S' || half === 'W' ? -1 : 1) * (degrees + minutes / 60 + seconds / 3600)
  }
  const [latitudeDeg, longitudeDeg] = [angle(2, gps.text(1)), angle(4, gps.text(3))]
  if (![latitudeDeg, longitudeDeg].every(Number.isFinite)) return undefined
  const [height] = gps.numbers(6)
  if (!Number.isFinite(height)) return { latitudeDeg, longitudeDeg }
  return { latitudeDeg, longitudeDeg, altitudeM: gps.numbers(5)[0] === 1 ? -height : height }
}

/** Absent, empty and zero fields are left out. */
export function exifMetadata(directories: readonly TiffDirectory[]): ExposureMetadata {
  const text = (tag: number) => directories.map((directory) => directory.text(tag)).find((value) => value !== undefined)
  const number = (tag: number) => directories.map((directory) => directory.numbers(tag)[0]).find(Number.isFinite)
  return givenFields({
    make: text(271),
    model: text(272),
    lens: text(42036),
    iso: number(34855),
    exposureTimeS: number(33434),
    apertureF: number(33437),
    focalLengthMm: number(37386),
    takenAt: text(36867) ?? text(306),
    artist: text(315),
    copyright: text(33432),
    description: text(270),
    gps: placeOf(directories),
  })
}
