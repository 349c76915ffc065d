// Which places of a frame are likely neutral, best first, found from the overview's cells alone. Runs in a worker: plain data
// in and out, about a tenth of a second for a full grid.
import type { CellGrid } from '../../frame/cell-grid.ts'
import type { NoiseModel } from '../../frame/frame.ts'
import { measureBulge } from './bulge.ts'
import { readColourCells } from './colour-cells.ts'
import { colourRange } from './colour-range.ts'
import { describeMode, foliageNamedBelowNm } from './describe-mode.ts'
import { modeFeatures } from './mode-features.ts'
import { modePlace } from './mode-place.ts'
import { findModes } from './modes.ts'
import { findFoliage, type MeasuredMode } from './offer-foliage.ts'
import { bulgeWeights, neutralWeights, scoreMode, type ScoreWeights } from './score-mode.ts'
import { type RememberedGrey, sameColourStops, type Suggestion, type Suggestions } from './suggestion.ts'
import { tellApart } from './tell-apart.ts'

export interface SuggestionOptions {
  /** Cut-on of the filter; undefined where it is not known, 0 for none. */
  readonly filterNm?: number
  readonly remembered?: RememberedGrey
}

/** Distance between the deciles of log2 R/B in stops below which no colour is left (simulated: all frames at 830 nm, 2 % at 720). */
const leastColour = 0.05
/** Most neutrals offered. */
const mostOffers = 8
/** Place in the list kept for the colour that bulges most, whatever its brightness: without it dark neutrals hardly come up. */
const bulgePlace = 2

function makeSuggestion(
  { mode, features }: MeasuredMode,
  place: Suggestion['place'],
  score: number,
  reason: string,
): Suggestion {
  const { u, v } = mode
  return { place, u, v, redStops: -u, blueStops: -v, score, area: features.area, reason }
}

interface ScoredMode extends MeasuredMode {
  readonly score: number
  readonly bulgeScore: number
}

/** Best first and no colour twice; `measured` falls in score. */
function rank(measured: readonly ScoredMode[]): ScoredMode[] {
  const ranked: ScoredMode[] = []
  let rest = measured
  while (rest.length && ranked.length < mostOffers) {
    const next = ranked.length === bulgePlace ? rest.reduce((a, b) => (b.bulgeScore > a.bulgeScore ? b : a)) : rest[0]
    ranked.push(next)
    rest = rest.filter(({ mode }) => Math.hypot(mode.u - next.mode.u, mode.v - next.mode.v) >= sameColourStops)
  }
  return ranked
}

/**
 * Suggestions for the cells of a frame (see `frameCells`). Where nothing piles up or nothing is usable the list is empty:
 * the automatic neutrals remain.
 */
export function suggestNeutrals(grid: CellGrid, noise: NoiseModel, options: SuggestionOptions = {}): Suggestions {
  const { filterNm, remembered } = options
  const cells = readColourCells(grid, noise)
  if (cells.u.length === 0) return { neutrals: [], foliage: null, colourLeft: false }
  const range = colourRange(cells)
  const modes = findModes(cells, range)
  const bulge = measureBulge(modes)
  const measured = modes
    .map((mode) => {
      const features = modeFeatures(cells, range, mode, bulge(mode))
      const by = (weights: ScoreWeights) => scoreMode(mode, features, weights, remembered)
      return { mode, features, score: by(neutralWeights), bulgeScore: by(bulgeWeights) }
    })
    .sort((a, b) => b.score - a.score)
  const ranked = rank(measured)
  const places = ranked.map(({ mode }) => modePlace(cells, mode))
  const reasons = tellApart(
    ranked.map(({ features }, i) => ({ features, place: places[i], reason: describeMode(features, filterNm) })),
  )
  const neutrals = ranked.map((one, i) => makeSuggestion(one, places[i], one.score, reasons[i]))
  const foliage = measured.length ? findFoliage(measured, measured[0].mode, range, filterNm) : null
  const named = filterNm !== undefined && filterNm < foliageNamedBelowNm
  return {
    neutrals,
    foliage:
      foliage &&
      makeSuggestion(foliage, modePlace(cells, foliage.mode), 0, named ? 'foliage' : 'lowest red to blue, textured'),
    colourLeft: range.deciles >= leastColour,
  }
}
