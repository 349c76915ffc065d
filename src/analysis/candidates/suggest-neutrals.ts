// Which places of a frame are likely neutral, best first, found from the overview's cells alone. Runs in a worker: plain data
// in and out, about a tenth of a second for a full grid.
import type { CellGrid } from '../../frame/cell-grid.ts'
import type { NoiseModel } from '../../frame/frame.ts'
import { automaticNeutral } from './automatic-neutral.ts'
import { type ColourCells, readColourCells } from './colour-cells.ts'
import { colourRange } from './colour-range.ts'
import { describeMode, foliageNamedBelowNm } from './describe-mode.ts'
import { modeFeatures } from './mode-features.ts'
import { modePlace } from './mode-place.ts'
import { findModes } from './modes.ts'
import { findFoliage, type MeasuredMode } from './offer-foliage.ts'
import { scoreMode } from './score-mode.ts'
import type { RememberedGrey, Suggestion, Suggestions } from './suggestion.ts'

export interface SuggestionOptions {
  /** Cut-on of the filter; undefined where it is not known, 0 for none. */
  readonly filterNm?: number
  readonly remembered?: RememberedGrey
}

/** Distance between the deciles of log2 R/B in stops below which no colour is left (simulated: all frames at 830 nm, 2 % at 720). */
const leastColour = 0.05
/** Most neutrals offered, and the distance in stops within which the better of two speaks for both. */
const mostOffers = 8
const sameColour = 0.06

function makeSuggestion(
  cells: ColourCells,
  { mode, features }: MeasuredMode,
  score: number,
  reason: string,
): Suggestion {
  const { u, v } = mode
  return { place: modePlace(cells, mode), u, v, redStops: -u, blueStops: -v, score, area: features.area, reason }
}

/**
 * Suggestions for the cells of a frame (see `frameCells`). Where nothing piles up or nothing is usable the list is empty:
 * the automatic neutrals remain.
 */
export function suggestNeutrals(grid: CellGrid, noise: NoiseModel, options: SuggestionOptions = {}): Suggestions {
  const { filterNm, remembered } = options
  const cells = readColourCells(grid, noise)
  const shadesOfGrey = automaticNeutral(grid, 'shades of grey')
  if (cells.u.length === 0 || !shadesOfGrey) return { neutrals: [], foliage: null, colourLeft: false }
  const range = colourRange(cells)
  const measured = findModes(cells, range)
    .map((mode) => {
      const features = modeFeatures(cells, range, mode)
      return { mode, features, score: scoreMode(mode, features, range, shadesOfGrey, remembered) }
    })
    .sort((a, b) => b.score - a.score)
  const distinct = measured.filter(({ mode }, i) =>
    measured.slice(0, i).every((better) => Math.hypot(mode.u - better.mode.u, mode.v - better.mode.v) >= sameColour),
  )
  const neutrals = distinct
    .slice(0, mostOffers)
    .map((one) => makeSuggestion(cells, one, one.score, describeMode(one.features, filterNm)))
  const foliage = measured.length ? findFoliage([...measured], measured[0].mode, range, filterNm) : null
  const named = filterNm !== undefined && filterNm < foliageNamedBelowNm
  return {
    neutrals,
    foliage: foliage && makeSuggestion(cells, foliage, 0, named ? 'foliage' : 'lowest red to blue, textured'),
    colourLeft: range.deciles >= leastColour,
  }
}
