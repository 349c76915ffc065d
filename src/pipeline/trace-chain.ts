// One pixel on its way through a chain: its colour after every step, as numbers and as it would be shown if the chain ended
// there. `cameraRgb` with peak in. The way a colour takes tells more about a chain than its end does.
import type { CameraColour } from '../frame/overview-colour.ts'
import type { Pixel } from '../operations/define.ts'
import type { PipelineDescription } from './description.ts'
import { runStep } from './run-step.ts'

type Rgb = readonly [red: number, green: number, blue: number]

export interface TracedColour {
  /** The step it has passed; null for the sensor itself. */
  readonly stepId: string | null
  /** Linear after all steps but the last, which encodes. */
  readonly rgb: Rgb
  /** Encoded `displayRgb` 0…1 of the chain's output space. */
  readonly shown: Rgb
}

const rgbOf = (pixel: Pixel): Rgb => [pixel[0], pixel[1], pixel[2]]

/** The colours of a pixel at (`x`, `y`), 0…1 of the frame: the sensor first, the output last. */
export function traceChain({ steps }: PipelineDescription, camera: CameraColour, x: number, y: number): TracedColour[] {
  const output = steps.at(-1)!
  const pixel = Float64Array.of(...camera, x, y)
  const seen = (stepId: string | null): TracedColour => {
    const rgb = rgbOf(pixel)
    if (stepId === output.stepId) return { stepId, rgb, shown: rgb }
    const ended = pixel.slice()
    runStep(output, ended)
    return { stepId, rgb, shown: rgbOf(ended) }
  }
  const colours = [seen(null)]
  for (const step of steps) {
    runStep(step, pixel)
    colours.push(seen(step.stepId))
  }
  return colours
}
