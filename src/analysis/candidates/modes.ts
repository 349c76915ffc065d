// The colours that pile up in a frame: found in the whole of it and again among its bright, middle and dark cells, because a
// small grey wall drowns in foliage of nearly its colour but not among cells of its own brightness.
import type { ColourCells } from './colour-cells.ts'
import type { ColourRange } from './colour-range.ts'
import { indexColours } from './colour-index.ts'
import { findPeaks } from './density-peaks.ts'

export interface Mode {
  readonly u: number
  readonly v: number
  /** Usable cells of this colour, indices into `ColourCells`. */
  readonly members: readonly number[]
}

/** Bandwidth in stops: part of the spread, within limits, widened by noise (tuned by simulation). */
const bandwidthOfSpread = 0.005
const bandwidthLimits = [0.006, 0.014] as const
/** Radius of a colour in bandwidths, least share of the frame it covers, and least distance of two colours in stops. */
const radiusInBandwidths = 2.2
const leastShare = 0.001
const leastDistance = 0.02
/** Level bands in stops from the frame's bright end (tuned by simulation); the first is the whole. */
const bands = [
  [-Infinity, Infinity],
  [-1.1, Infinity],
  [-2.6, -0.8],
  [-6, -2.2],
] as const

/** Colours that pile up, those of the whole frame first, then those only seen in a band. */
export function findModes(cells: ColourCells, range: ColourRange): Mode[] {
  const { u, v, level, pure, noiseStops } = cells
  const wanted = Math.hypot(noiseStops, bandwidthOfSpread * range.spread)
  const bandwidth = Math.min(Math.max(wanted, bandwidthLimits[0]), bandwidthLimits[1])
  const radius = radiusInBandwidths * bandwidth
  const index = indexColours(u, v, radius)
  const modes: Mode[] = []
  for (const [from, to] of bands) {
    const inBand = (i: number) => pure[i] === 1 && level[i] - range.bright >= from && level[i] - range.bright < to
    for (const peak of findPeaks(u, v, inBand, bandwidth)) {
      const around = index.near(peak.u, peak.v).filter(inBand)
      if (around.length < leastShare * u.length) continue
      const centre = { u: 0, v: 0 }
      for (const i of around) {
        centre.u += u[i] / around.length
        centre.v += v[i] / around.length
      }
      if (modes.some((mode) => Math.hypot(mode.u - centre.u, mode.v - centre.v) < leastDistance)) continue
      modes.push({ ...centre, members: index.near(centre.u, centre.v) })
    }
  }
  return modes
}
