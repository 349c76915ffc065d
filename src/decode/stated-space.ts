// Which colour space the numbers of a developed file are in: its profile, else what EXIF states, else sRGB with a warning.
import { D65, rgbToXyz, SRGB_PRIMARIES } from '../colour/primaries.ts'
import { decode, SRGB_CURVE } from '../colour/transfer-curve.ts'
import { type Curve, type EmbeddedSpace, readIccProfile } from './icc-reader.ts'
import type { TiffDirectory } from './tiff-directories.ts'

interface StatedSpace {
  readonly space: EmbeddedSpace
  readonly warnings: readonly string[]
}

const srgbCurve: Curve = (encoded) => decode(SRGB_CURVE, encoded)
const srgb: EmbeddedSpace = {
  name: 'sRGB',
  curves: [srgbCurve, srgbCurve, srgbCurve],
  toXyz: rgbToXyz(SRGB_PRIMARIES),
}
/** The optional colour space of camera files (DCF 2.0, from memory: power 563/256), which has no profile by custom. */
const wideCurve: Curve = (encoded) => encoded ** (563 / 256)
const cameraWide: EmbeddedSpace = {
  name: 'DCF optional RGB',
  curves: [wideCurve, wideCurve, wideCurve],
  toXyz: rgbToXyz({ red: [0.64, 0.33], green: [0.21, 0.71], blue: [0.15, 0.06], white: D65 }),
}

/** EXIF tags: ColorSpace (1 is sRGB) and, in the interoperability directory, its index (R03 is the optional space). */
const colourSpaceTag = 40961
const indexTag = 1

/** The space of a file with this profile and these EXIF directories. */
export function statedSpace(profile: Uint8Array | null, directories: readonly TiffDirectory[]): StatedSpace {
  const read = profile && readIccProfile(profile)
  if (read) return { space: read, warnings: [] }
  if (directories.some((directory) => directory.text(indexTag) === 'R03')) return { space: cameraWide, warnings: [] }
  if (profile) {
    const why = 'is damaged or made of tables only, and is not read'
    return { space: srgb, warnings: [`The colour profile of the file ${why}: its numbers are taken as sRGB.`] }
  }
  const isStated = directories.some((directory) => directory.numbers(colourSpaceTag)[0] === 1)
  const warnings = isStated ? [] : ['The file names no colour space: its numbers are taken as sRGB.']
  return { space: srgb, warnings }
}
