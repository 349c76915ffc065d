// The spaces a finished picture can be written in: primaries, curve and the matrix from linear `workingRgb`.
// Files and pixels read the same record, so a profile can never disagree with the picture it describes.
import { invert, multiply } from '../math/mat3.ts'
import {
  adaptWhite,
  D65,
  DISPLAY_P3_PRIMARIES,
  REC2020_PRIMARIES,
  type RgbPrimaries,
  rgbToXyz,
  ROMM_PRIMARIES,
  SRGB_PRIMARIES,
} from './primaries.ts'
import { REC2020_CURVE, ROMM_CURVE, SRGB_CURVE, type TransferCurve } from './transfer-curve.ts'
import { workingToXyz } from './working-space.ts'

export type OutputSpaceId = 'srgb' | 'display-p3' | 'rec2020' | 'romm'

export interface OutputSpace {
  readonly id: OutputSpaceId
  readonly title: string
  readonly primaries: RgbPrimaries
  readonly curve: TransferCurve
  /** Linear `workingRgb` to linear RGB of this space, row-major; whites are adapted by Bradford. */
  readonly fromWorking: readonly number[]
}

function outputSpace(id: OutputSpaceId, title: string, primaries: RgbPrimaries, curve: TransferCurve): OutputSpace {
  const toSpace = multiply(invert(rgbToXyz(primaries)), adaptWhite(D65, primaries.white))
  return { id, title, primaries, curve, fromWorking: multiply(toSpace, workingToXyz) }
}

export const OUTPUT_SPACES: Readonly<Record<OutputSpaceId, OutputSpace>> = {
  srgb: outputSpace('srgb', 'sRGB', SRGB_PRIMARIES, SRGB_CURVE),
  'display-p3': outputSpace('display-p3', 'Display P3', DISPLAY_P3_PRIMARIES, SRGB_CURVE),
  rec2020: outputSpace('rec2020', 'Rec. 2020', REC2020_PRIMARIES, REC2020_CURVE),
  romm: outputSpace('romm', 'ROMM RGB', ROMM_PRIMARIES, ROMM_CURVE),
}

/** The space of an id. Throws a RangeError that names the known ones. */
export function outputSpaceById(id: string): OutputSpace {
  const known = Object.keys(OUTPUT_SPACES)
  if (!known.includes(id)) throw new RangeError(`No output space is called “${id}”; known are ${known.join(', ')}.`)
  return OUTPUT_SPACES[id as OutputSpaceId]
}
