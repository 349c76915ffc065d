// A sample of everything inside an outline drawn by hand, for materials that no circle fits. Cells of another colour (a twig
// before a wall, a leaf on paving) are left out whole, on both sides alike, so that the mean of the rest is not biased.
import { clippingLevel } from './cell-grid.ts'
import { cellReader } from './cell-reader.ts'
import { mostSampledCells, type SampledCells } from './disc-cells.ts'
import type { NoiseModel, SensorData } from './frame.ts'
import { judgeSample, type PatchSample } from './sample-patch.ts'
import { withoutOutliers } from './without-outliers.ts'

/** Corners of an outline, x and y 0…1 of the upright frame; the last is joined to the first. */
export type Outline = readonly (readonly [x: number, y: number])[]

/** Where a horizontal line crosses the outline, in order; between pairs lies the inside (even-odd rule). */
function crossings(outline: Outline, y: number): number[] {
  const found: number[] = []
  for (let n = 0; n < outline.length; n++) {
    const [x0, y0] = outline[n]
    const [x1, y1] = outline[(n + 1) % outline.length]
    if (y0 <= y !== y1 <= y) found.push(x0 + ((y - y0) * (x1 - x0)) / (y1 - y0))
  }
  return found.sort((a, b) => a - b)
}

/** Area of an outline as a share of the frame; parts wound against each other cancel. */
function areaOf(outline: Outline): number {
  let twice = 0
  for (let n = 0; n < outline.length; n++) {
    const [x0, y0] = outline[n]
    const [x1, y1] = outline[(n + 1) % outline.length]
    twice += x0 * y1 - x1 * y0
  }
  return Math.abs(twice) / 2
}

/** The cells whose centre lies inside an outline; of large ones every nth. */
function readRegion(sensor: SensorData, outline: Outline): SampledCells {
  const { cell, across, down, read } = cellReader(sensor)
  const every = Math.max(1, Math.ceil(Math.sqrt((areaOf(outline) * across * down) / mostSampledCells)))
  const values: number[] = []
  const one = new Float64Array(3)
  let allCells = 0
  for (let j = Math.floor(every / 2); j < down; j += every) {
    const edges = crossings(outline, (j + 0.5) / down)
    for (let pair = 0; pair + 1 < edges.length; pair += 2) {
      const first = Math.max(0, Math.ceil(edges[pair] * across - 0.5))
      const last = Math.min(across - 1, Math.floor(edges[pair + 1] * across - 0.5))
      for (let i = Math.ceil(first / every) * every; i <= last; i += every) {
        allCells++
        if (read(i, j, one, 0) < clippingLevel) values.push(...one)
      }
    }
  }
  return { rgb: Float64Array.from(values), cells: values.length / 3, allCells, cell }
}

/**
 * Samples what an outline holds. Throws a RangeError where it has fewer than three corners or no cell's centre lies inside.
 */
export function sampleRegion(sensor: SensorData, noise: NoiseModel, outline: Outline): PatchSample {
  const sampled = outline.length < 3 ? null : readRegion(sensor, outline)
  if (!sampled?.allCells) throw new RangeError('This outline holds no part of the picture; draw a larger one on it.')
  return judgeSample(withoutOutliers(sampled), noise)
}
