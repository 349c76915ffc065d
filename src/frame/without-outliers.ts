// The cells of a sample less those of another colour (a twig before a wall, a leaf on paving): they are left out whole, on both
// sides alike, so that the mean of the rest is not biased.
import { medianInPlace } from '../math/order-statistics.ts'
import type { SampledCells } from './disc-cells.ts'

/** A cell is left out beyond this many robust deviations from the median; rounds in which deviations are taken anew (common practice, no source). */
const outlierDeviations = 4
const rounds = 2
/** Deviation of a normal distribution in median and in mean absolute deviations; the latter where most cells are equal (Iglewicz & Hoaglin 1993, from memory). */
const deviationPerMad = 1.4826
const deviationPerMean = 1.2533

/** Half width of the differences that stay, about their median. */
function reachOf(differences: Float64Array): { middle: number; reach: number } {
  const middle = medianInPlace(differences.slice())
  const deviations = differences.map((value) => Math.abs(value - middle))
  const mean = deviations.reduce((total, value) => total + value, 0) / deviations.length
  const mad = medianInPlace(deviations)
  return { middle, reach: outlierDeviations * (mad > 0 ? deviationPerMad * mad : deviationPerMean * mean) }
}

/** The cells less those of another colour. Differences are taken in light, not in logs, which would bias dark cells. */
export function withoutOutliers(sampled: SampledCells): SampledCells {
  let { rgb } = sampled
  for (let round = 0; round < rounds && rgb.length > 3; round++) {
    const cells = rgb.length / 3
    const [r, g, b] = [0, 1, 2].map((c) =>
      medianInPlace(Float64Array.from({ length: cells }, (_, i) => rgb[3 * i + c])),
    )
    if (Math.min(r, g, b) <= 0) break
    const red = new Float64Array(cells)
    const blue = new Float64Array(cells)
    for (let i = 0; i < cells; i++) {
      const green = rgb[3 * i + 1] / g
      red[i] = rgb[3 * i] / r - green
      blue[i] = rgb[3 * i + 2] / b - green
    }
    const [ofRed, ofBlue] = [reachOf(red), reachOf(blue)]
    const kept = new Float64Array(rgb.length)
    let length = 0
    for (let i = 0; i < cells; i++) {
      if (Math.abs(red[i] - ofRed.middle) > ofRed.reach || Math.abs(blue[i] - ofBlue.middle) > ofBlue.reach) continue
      kept.set(rgb.subarray(3 * i, 3 * i + 3), length)
      length += 3
    }
    rgb = kept.slice(0, length)
  }
  return { ...sampled, rgb, cells: rgb.length / 3, allCells: sampled.allCells - sampled.cells + rgb.length / 3 }
}
