// How far from grey things read behind a long-pass filter: what decides whether a frame filled with them sets a neutral or a tint.
// Computed by us in sunlight from measured reflectances (USGS Spectral Library Version 7) and the mean of two sensors without
// infrared-cut glass (ISETCam). An overcast sky changes these distances by
// .02 stop at most; open shade makes them up to a third larger, in the same order.

interface Subject {
  readonly name: string
  /** Distance in stops from an ideal grey card on the plane of log2 R/G and B/G, behind each of `computedNm`. */
  readonly stops: readonly number[]
}

/** Cut-ons in nm that were computed; between them the distance is interpolated. */
export const computedNm: readonly number[] = [550, 590, 630, 665, 695, 720]
/** From here on hardly any colour is left: behind 780 nm foliage and sky lie .08 stop apart (computed by us). */
export const colourlessFromNm = 750
/** Nearer than this to grey a subject serves as one; up to the second it tints the picture a little (our choice). */
export const servesBelowStops = 0.06
export const tintsBelowStops = 0.2

export const subjects: readonly Subject[] = [
  { name: 'Cloud, far from the sun', stops: [0, 0, 0, 0, 0, 0] },
  { name: 'Concrete', stops: [0.04, 0, 0.01, 0.01, 0.01, 0.01] },
  { name: 'White cloth', stops: [0.03, 0.02, 0.01, 0.01, 0, 0] },
  { name: 'White paint', stops: [0.06, 0.05, 0.04, 0.03, 0.02, 0.02] },
  { name: 'Brick', stops: [0.23, 0.07, 0.05, 0.03, 0.02, 0.02] },
  { name: 'Melting snow', stops: [0.09, 0.08, 0.07, 0.06, 0.05, 0.04] },
  { name: 'Pale stone', stops: [0.13, 0.09, 0.07, 0.05, 0.04, 0.03] },
  { name: 'Old asphalt', stops: [0.19, 0.13, 0.1, 0.07, 0.05, 0.04] },
  { name: 'Dry grass', stops: [0.3, 0.19, 0.15, 0.1, 0.07, 0.05] },
  { name: 'Bare timber', stops: [0.33, 0.2, 0.15, 0.1, 0.07, 0.05] },
  { name: 'Sand', stops: [0.29, 0.23, 0.19, 0.13, 0.09, 0.06] },
  { name: 'White water', stops: [0.28, 0.21, 0.18, 0.14, 0.11, 0.09] },
  { name: 'Conifers', stops: [0.64, 0.61, 0.52, 0.32, 0.16, 0.09] },
  { name: 'Broadleaf trees', stops: [0.78, 0.75, 0.61, 0.36, 0.16, 0.07] },
  { name: 'Green grass', stops: [0.88, 0.85, 0.69, 0.43, 0.23, 0.12] },
]
/** Distance in stops that a grey moves from sun to open shade under a clear sky; the larger of the two sensors. */
export const greySunToShade: readonly number[] = [0.71, 0.44, 0.34, 0.25, 0.2, 0.16]

/** A number given at the computed cut-ons at any other: straight between them, unchanged beyond the first and the last. */
export function atCutOn(stops: readonly number[], filterNm: number): number {
  const above = computedNm.findIndex((nm) => nm >= filterNm)
  if (above === 0) return stops[0]
  if (above < 0) return stops.at(-1)!
  const [from, to] = [computedNm[above - 1], computedNm[above]]
  return stops[above - 1] + ((filterNm - from) / (to - from)) * (stops[above] - stops[above - 1])
}
