// `workingRgb`: unbounded linear light with Rec. 2020 primaries and D65. Balanced `cameraRgb` numbers are working numbers,
// because infrared has no colorimetric truth that a camera matrix could restore.
import { invert } from '../math/mat3.ts'
import { REC2020_PRIMARIES, rgbToXyz } from './primaries.ts'

/** Linear `workingRgb` to XYZ (D65, Y of white 1), row-major. */
export const workingToXyz: readonly number[] = rgbToXyz(REC2020_PRIMARIES)

/** XYZ (D65) to linear `workingRgb`, row-major. */
export const xyzToWorking: readonly number[] = invert(workingToXyz)
