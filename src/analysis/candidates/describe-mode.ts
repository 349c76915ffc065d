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

/** More words than this are not read beside a small picture (our choice). */
export const mostWords = 3

/** Where a colour lies between foliage and sky. From about 700 nm the two ends are no longer foliage and sky for certain. */
function alongWord(along: number, named: boolean): string {
  if (Math.abs(along - neutralAlong) < middle) return named ? 'between foliage and sky' : ''
  if (along < 0.2) return named ? 'close to foliage' : 'low red to blue'
  if (along > 0.95) return named ? 'close to the sky' : 'high red to blue'
  return ''
}

/** Words from what counts most to what counts least; `filterNm` undefined where the filter is not known. */
export function describeMode(
  { brightStops, texture, area, along }: ModeFeatures,
  filterNm: number | undefined,
): string {
  const words = [
    brightStops > bright ? 'bright' : brightStops < dark ? 'dark' : '',
    alongWord(along, filterNm !== undefined && filterNm < foliageNamedBelowNm),
    texture < even ? 'even' : texture > textured ? 'textured' : '',
    area > large ? 'large area' : area < small ? 'small area' : '',
  ]
  return words.filter(Boolean).slice(0, mostWords).join(', ')
}

/** Cut-on from which foliage can no longer be told by colour: wrong offers rise from 3 % to 20 % of simulated scenes. */
export const foliageNamedBelowNm = 690
