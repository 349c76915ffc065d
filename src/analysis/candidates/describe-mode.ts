// Why a colour is offered, in a few words that a photographer can check by looking at the place.
import type { ModeFeatures } from './mode-features.ts'

/** Limits of the words (our choice). */
const bright = -0.8
const dark = -2.5
const even = 0.15
const textured = 0.4
const large = 0.2
const small = 0.01
/** Where neutrals mostly lie from the foliage end (0) to the sky end (1), and how far around. */
const neutralAlong = 0.65
const middle = 0.25

/** Words from what counts most to what counts least; `filterNm` undefined where the filter is not known. */
export function describeMode(features: ModeFeatures, filterNm: number | undefined): string {
  const { brightStops, texture, area, along } = features
  const words: string[] = []
  if (brightStops > bright) words.push('bright')
  else if (brightStops < dark) words.push('dark')
  if (texture < even) words.push('even')
  else if (texture > textured) words.push('textured')
  if (area > large) words.push('large area')
  else if (area < small) words.push('small area')
  // From about 700 nm the two ends are no longer foliage and sky for certain.
  const named = filterNm !== undefined && filterNm < foliageNamedBelowNm
  if (Math.abs(along - neutralAlong) < middle) words.push(named ? 'between foliage and sky' : 'mid-range red to blue')
  else if (along < 0.2) words.push(named ? 'close to foliage' : 'low red to blue')
  else if (along > 0.95) words.push(named ? 'close to the sky' : 'high red to blue')
  return words.join(', ')
}

/** Cut-on from which foliage can no longer be told by colour: wrong offers rise from 3 % to 20 % of simulated scenes. */
export const foliageNamedBelowNm = 690
