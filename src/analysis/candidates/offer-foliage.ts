// Foliage as a neutral of its own: white foliage is what many want from 720 nm on. It is offered only where the frame holds
// a textured colour far enough from the likely neutral towards low red to blue.
import type { ColourRange } from './colour-range.ts'
import type { ModeFeatures } from './mode-features.ts'
import type { Mode } from './modes.ts'

export interface MeasuredMode {
  readonly mode: Mode
  readonly features: ModeFeatures
}

const leastArea = 0.01
const leastTexture = 0.08
const weights = { along: -2, texture: 2, area: 0.15, bright: 0.1 }
/** Least distance in stops of log2 R/B from the likely neutral, by cut-on in nm (tuned by simulation). */
const leastDistance: readonly (readonly [nm: number, stops: number])[] = [
  [590, 0.6],
  [630, 0.5],
  [665, 0.3],
  [695, 0.13],
  [720, 0.06],
]

/** Linear between the tabulated cut-ons; the middle one where the filter is not known. */
function foliageDistance(filterNm = 665): number {
  const after = leastDistance.findIndex(([nm]) => nm >= filterNm)
  if (after === 0) return leastDistance[0][1]
  if (after < 0) return leastDistance[leastDistance.length - 1][1]
  const [[nm0, stops0], [nm1, stops1]] = [leastDistance[after - 1], leastDistance[after]]
  return stops0 + ((stops1 - stops0) * (filterNm - nm0)) / (nm1 - nm0)
}

/** The mode that is most likely foliage, or null where none is clearly enough away from the likely neutral `first`. */
export function findFoliage(
  modes: readonly MeasuredMode[],
  first: Mode,
  range: ColourRange,
  filterNm: number | undefined,
): MeasuredMode | null {
  const p = ({ u, v }: Mode) => u - v
  const rank = ({ mode, features }: MeasuredMode) =>
    (weights.along * p(mode)) / range.spread +
    weights.texture * features.texture +
    weights.area * Math.log2(features.area) +
    weights.bright * features.brightStops
  const leafy = modes.filter(({ features }) => features.area > leastArea && features.texture > leastTexture)
  const [best] = leafy.sort((a, b) => rank(b) - rank(a))
  return best && p(first) - p(best.mode) > foliageDistance(filterNm) ? best : null
}
