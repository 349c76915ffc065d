// How far 32-bit rounding can carry a chain's result: the reference engine is run again with every step's input off by a few
// units in the last place, and the changes at the end are added up. A fixed limit would either hide faults in ordinary
// pixels or condemn the few where a cube root or a power near zero makes any rounding visible.
import { runStep } from '../../src/pipeline/run-step.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'

/** Units in the last place that one step of matrices, powers and roots gathers: beyond two hardly 1e-7 is left (measured). */
const unitsInLastPlace = 2
const unit = 2 ** -24

/** Per channel of the result, the sum of its changes under perturbations of each channel before each step; `width` pixels to a row. */
export function roundingReach({ steps }: PipelineDescription, rgba: Float32Array, width: number): Float32Array {
  const height = rgba.length / 4 / width
  const reach = new Float32Array((rgba.length / 4) * 3)
  const finish = (from: number, start: Float64Array) => {
    const pixel = start.slice()
    for (const step of steps.slice(from)) runStep(step, pixel)
    return pixel
  }
  for (let i = 0; i < rgba.length / 4; i++) {
    const place = [((i % width) + 0.5) / width, (Math.floor(i / width) + 0.5) / height]
    const state = new Float64Array([...rgba.subarray(i * 4, i * 4 + 4), ...place])
    const exact = finish(0, state)
    steps.forEach((step, s) => {
      const largest = Math.max(Math.abs(state[0]), Math.abs(state[1]), Math.abs(state[2]))
      for (let channel = 0; channel < 3; channel++) {
        const ends = [-1, 1].map((sign) => {
          const moved = state.slice()
          moved[channel] += sign * unitsInLastPlace * unit * largest
          return finish(s, moved)
        })
        for (let c = 0; c < 3; c++) {
          reach[i * 3 + c] += Math.max(...ends.map((end) => Math.abs(end[c] - exact[c])))
        }
      }
      runStep(step, state)
    })
  }
  return reach
}
