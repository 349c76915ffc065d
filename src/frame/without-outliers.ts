// The cells of a sample less those of another colour (a twig before a wall, a leaf on paving): they are left out whole, on both
// sides alike, so that the mean of the rest is not biased.
import type { SampledCells } from './disc-cells.ts'

/** A cell is left out beyond this many robust deviations from the median; rounds in which deviations are taken anew (common practice, no source). */
const outlierDeviations = 4
const rounds = 2
/** Deviation of a normal distribution in median and in mean absolute deviations; the latter where most cells are equal (Iglewicz & Hoaglin 1993, from memory). */
const deviationPerMad = 1.4826
const deviationPerMean = 1.2533

const median = (values: Float64Array) => values.slice().sort()[values.length >> 1]
const sum = (values: Float64Array) => values.reduce((total, value) => total + value, 0)

/** The cells less those of another colour. Differences are taken in light, not in logs, which would bias dark cells. */
export function withoutOutliers(sampled: SampledCells): SampledCells {
  let { rgb } = sampled
  for (let round = 0; round < rounds && rgb.length > 3; round++) {
    const at = (c: number) => rgb.filter((_, i) => i % 3 === c)
    const [red, green, blue] = [at(0), at(1), at(2)]
    const [r, g, b] = [red, green, blue].map(median)
    if (Math.min(r, g, b) <= 0) break
    const differences = [
      red.map((value, i) => value / r - green[i] / g),
      blue.map((value, i) => value / b - green[i] / g),
    ]
    const limits = differences.map((values) => {
      const middle = median(values)
      const deviations = values.map((value) => Math.abs(value - middle))
      const mad = median(deviations)
      const deviation = mad > 0 ? deviationPerMad * mad : (deviationPerMean * sum(deviations)) / deviations.length
      return { middle, reach: outlierDeviations * deviation }
    })
    const inside = (cell: number) =>
      limits.every(({ middle, reach }, k) => Math.abs(differences[k][cell] - middle) <= reach)
    rgb = rgb.filter((_, i) => inside(Math.floor(i / 3)))
  }
  return { ...sampled, rgb, cells: rgb.length / 3, allCells: sampled.allCells - sampled.cells + rgb.length / 3 }
}
