// A picture as it is usually finished: every kind of step once, at values a photographer might set, for holding the engines
// to each other where pictures live. What is set apart in `operations.test.ts` are the ends of the ranges.
import type { Supplies } from '../../src/operations/define.ts'
import { shadePlane } from '../../src/operations/second-light.ts'
import type { Chain } from '../../src/operations/step.ts'
import { addStep } from '../../src/edits/stack.ts'

const steps: readonly (readonly [operation: string, values: Parameters<typeof addStep>[2]])[] = [
  ['neutral', { redStops: -0.62, blueStops: 0.41 }],
  ['secondLight', { redStops: -0.2, blueStops: 0.25 }],
  ['infraredSplit', { redPercent: 20, greenPercent: 15 }],
  ['channelMix', { rows: [0.1, 0, 0.9, 0, 1, 0, 0.9, 0, 0.1] }],
  ['hueTurn', { angleDeg: 18 }],
  ['hueBands', {}],
  ['colourStrength', { strengthStops: 0.5 }],
  ['tonalBalance', { shadowBlue: 0.1, highlightRed: 0.06 }],
  ['exposureContrast', { exposureEv: 0.6, contrast: 0.2, shoulder: 0.5 }],
  ['toneCurve', { points: [0, 0, 0.3, 0.26, 0.7, 0.76, 1, 1] }],
]

export function usualChain(colourless = false): Chain {
  let chain: Chain = addStep([], 'outputTransform')
  for (const [operation, values] of steps) chain = addStep(chain, operation, values)
  return colourless ? addStep(chain, 'blackAndWhite', { red: 60, green: 70, blue: -30 }) : chain
}

/** The plane of the second light, for the step's id in the usual chain. */
export const usualSupplies: Supplies = {
  [shadePlane('secondLight-1')]: { kind: 'plane', width: 2, height: 2, data: Float32Array.of(0, 0.4, 1, 0.7) },
}

/** `cameraRgb` as sensors give it behind a filter: from the deepest shadow to saturation, colours up to two stops apart. */
export function usualPixels(): { rgba: Float32Array; width: number; height: number } {
  const levels = Array.from({ length: 24 }, (_, i) => 2 ** (-9 + i * (9 / 23)))
  const ratios = [-2, -1.2, -0.6, -0.3, 0, 0.3, 0.6, 1.2]
  const pixels = levels.flatMap((level) =>
    ratios.flatMap((red) =>
      ratios.flatMap((blue) => {
        const rgb = [
          level * 2 ** Math.min(red, 0),
          level * 2 ** -Math.max(red, blue, 0),
          level * 2 ** Math.min(blue, 0),
        ]
        return [...rgb, Math.max(...rgb)]
      }),
    ),
  )
  return { rgba: new Float32Array(pixels), width: ratios.length ** 2, height: levels.length }
}
