// How much of a sensor's red and green is infrared, for the infrared split: read off by filter and by how red the frame's grey is.
// A grey that is redder behind one filter means a sensor that sees less visible green, so that more of its green is infrared.

/** What one sensor records of a spectrally flat grey behind one filter. */
interface GreyBehindFilter {
  /** Red over green. */
  readonly redGreen: number
  /** Shares of light above 780 nm in red and green, 0…1. */
  readonly red: number
  readonly green: number
}

/**
 * Cut-on in nm and two sensors: integrals of sun and sky (ASTM G173-03 global) × filter × sensitivity without infrared-cut filter
 * (ISETCam, Stanford), computed by us at 5 nm.
 */
const GREYS: readonly (readonly [filterNm: number, GreyBehindFilter, GreyBehindFilter])[] = [
  [550, { redGreen: 2.44, red: 0.227, green: 0.408 }, { redGreen: 1.67, red: 0.236, green: 0.336 }],
  [590, { redGreen: 3.38, red: 0.241, green: 0.601 }, { redGreen: 2.28, red: 0.252, green: 0.492 }],
  [610, { redGreen: 3.27, red: 0.271, green: 0.654 }, { redGreen: 2.34, red: 0.283, green: 0.567 }],
  [630, { redGreen: 2.94, red: 0.313, green: 0.679 }, { redGreen: 2.23, red: 0.325, green: 0.621 }],
  [665, { redGreen: 2.32, red: 0.408, green: 0.698 }, { redGreen: 1.88, red: 0.418, green: 0.671 }],
  [695, { redGreen: 1.96, red: 0.506, green: 0.731 }, { redGreen: 1.61, red: 0.52, green: 0.717 }],
  [720, { redGreen: 1.79, red: 0.587, green: 0.775 }, { redGreen: 1.47, red: 0.607, green: 0.765 }],
]
/** Behind longer filters next to nothing but infrared is left. */
export const LAST_SPLIT_NM = 750
/**
 * Without a filter blue sees blue light as well, and no weights of the three channels part infrared from it (tried by least squares on
 * 35 materials). This share off each of red and green brings relative colours nearest to the visible ones: by a quarter (computed by us).
 */
const FULL_SPECTRUM_SHARE = 0.45

const between = (a: number, b: number, t: number) => a + (b - a) * t

/** The row of the table at a cut-on, between its neighbours; the ends hold beyond. */
function greysAt(filterNm: number): [GreyBehindFilter, GreyBehindFilter] {
  const after = GREYS.findIndex(([nm]) => nm >= filterNm)
  const to = after < 0 ? GREYS.length - 1 : after
  const [toNm, ...high] = GREYS[to]
  const [fromNm, ...low] = GREYS[Math.max(to - 1, 0)]
  const t = toNm > fromNm ? Math.min(Math.max((filterNm - fromNm) / (toNm - fromNm), 0), 1) : 1
  return [0, 1].map((sensor) => ({
    redGreen: between(low[sensor].redGreen, high[sensor].redGreen, t),
    red: between(low[sensor].red, high[sensor].red, t),
    green: between(low[sensor].green, high[sensor].green, t),
  })) as [GreyBehindFilter, GreyBehindFilter]
}

/** Stops relative to green, as in `FrameFacts.referenceNeutral`. */
type Ratios = readonly [log2RedGreen: number, log2BlueGreen: number]

/**
 * Shares of infrared in red and green, 0…1, as the infrared split takes them: of the frame's opening neutral `reference`. `grey` is
 * what the frame's grey materials record. Null behind filters that leave no visible light. `filterNm` null is full spectrum.
 */
export function infraredShares(
  filterNm: number | null,
  grey: Ratios,
  reference: Ratios,
): { readonly red: number; readonly green: number } | null {
  if (filterNm === null) return { red: FULL_SPECTRUM_SHARE, green: FULL_SPECTRUM_SHARE }
  if (filterNm > LAST_SPLIT_NM) return null
  const [redder, paler] = greysAt(filterNm)
  const place = (grey[0] - Math.log2(paler.redGreen)) / Math.log2(redder.redGreen / paler.redGreen)
  const t = Math.min(Math.max(place, 0), 1)
  /** From shares of the grey to shares of the opening neutral: the sensor's light per blue is the same for both. */
  const redPerBlue = 2 ** (grey[0] - grey[1] - reference[0] + reference[1])
  const greenPerBlue = 2 ** (reference[1] - grey[1])
  return {
    red: between(paler.red, redder.red, t) * redPerBlue,
    green: between(paler.green, redder.green, t) * greenPerBlue,
  }
}
