// The size of the sample in even ratios, so that every step looks alike.
import type { Workbench } from '../../workbench/workbench.ts'

/** Radii in sensor pixels, about √2 apart; the smallest and the largest of a frame end them (our choice). */
const radiiPx = [0.5, 1, 2, 3, 4, 6, 8, 12, 16, 24, 32, 48, 64, 96, 128, 192, 256, 384, 512, 768, 1024, 1536]

/** Makes the sample the next size up or down from the present one. */
export function stepSampleRadius(workbench: Workbench, direction: 1 | -1): void {
  const { sampleRadiusPx } = workbench.session.getState()
  const next =
    direction > 0
      ? (radiiPx.find((radius) => radius > sampleRadiusPx) ?? Infinity)
      : radiiPx.findLast((radius) => radius < sampleRadiusPx)
  if (next !== undefined) workbench.setSampleRadius(next)
}
