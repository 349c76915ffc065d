// What would become of a neutral under a chain: colours of a patch for any gains, and gains for a shift that is seen in the
// finished picture. One pixel through the reference engine, so it holds whatever steps the chain is made of.
import { seenShift, solveAsSeen } from '../analysis/solve-as-seen.ts'
import type { NeutralGains } from '../edits/marks.ts'
import { type Chain, withProbe } from '../edits/stack.ts'
import type { FrameFacts } from '../frame/frame.ts'
import type { Supplies } from '../operations/define.ts'
import { meanLevel, neutral } from '../operations/neutral.ts'
import { secondLight } from '../operations/second-light.ts'
import { readValues } from '../operations/values.ts'
import { describe } from '../pipeline/describe.ts'
import { renderOnCpu } from '../pipeline/render-on-cpu.ts'

/** A shift of the finished picture in thousandths of OKLab chroma per lightness, about a mired of daylight each. */
export interface SeenShift {
  /** Towards warm; negative is cool. */
  readonly warm: number
  /** Towards magenta; negative is green. */
  readonly magenta: number
}

export interface NeutralOutlook {
  /** `cameraRgb` of a patch that these gains make grey, as bright as the frame is in the mean. */
  patchOf(gains: NeutralGains): readonly [number, number, number]
  /** What the chain makes of a patch of `cameraRgb` under a neutral: encoded sRGB, 0…1. */
  paint(patch: readonly number[], gains: NeutralGains): readonly [number, number, number]
  /** How far what is grey under `from` is moved in the finished picture by the neutral `gains`. */
  shiftOf(from: NeutralGains, gains: NeutralGains): SeenShift
  /** The neutral that moves what is grey under `from` by a shift; the last reachable one where the chain cannot show it all. */
  gainsFor(from: NeutralGains, shift: SeenShift): { readonly gains: NeutralGains; readonly reached: boolean }
}

const onePixel = { x: 0, y: 0, width: 1, height: 1, frameWidth: 1, frameHeight: 1 }

/** The outlook of a frame's chain; its neutral counts as switched on. Throws a RangeError when the chain cannot be drawn. */
export function neutralOutlook(chain: Chain, facts: FrameFacts, supplies: Supplies): NeutralOutlook {
  // A patch lies in no place, so it lies in the main light: shade has a neutral of its own.
  const inMainLight = chain.filter(({ operation }) => operation !== secondLight.id)
  const whole = withProbe(inMainLight, { redStops: 0, blueStops: 0 })
  const description = describe(whole, facts, { space: 'srgb', supplies })
  const values = readValues(neutral, whole[0].values, whole[0].version)
  const [first, ...rest] = description.steps

  function run(patch: readonly number[], gains: NeutralGains, steps: typeof rest): Float32Array {
    const coefficients = neutral.derive({ ...values, ...gains }, facts)
    const described = { ...description, steps: [{ ...first, coefficients }, ...steps] }
    return renderOnCpu(described, Float32Array.of(patch[0], patch[1], patch[2], 0), onePixel)
  }
  const linear = rest.slice(0, -1)

  function patchOf({ redStops, blueStops }: NeutralGains): [number, number, number] {
    const level = meanLevel(facts, redStops, blueStops)
    return [level * 2 ** -redStops, level, level * 2 ** -blueStops]
  }
  return {
    patchOf,
    paint(patch, gains) {
      const [red, green, blue] = run(patch, gains, rest)
      return [red, green, blue]
    },
    shiftOf(from, gains) {
      const patch = patchOf(from)
      const [before, after] = [from, gains].map((neutralGains) => seenShift([...run(patch, neutralGains, linear)]))
      return { warm: after.warm - before.warm, magenta: after.magenta - before.magenta }
    },
    gainsFor(from, { warm, magenta }) {
      const patch = patchOf(from)
      const moved = (redStops: number, blueStops: number): NeutralGains => ({
        redStops: from.redStops + redStops,
        blueStops: from.blueStops + blueStops,
      })
      const { redStops, blueStops, reached } = solveAsSeen({
        // The neutral sets the level by itself, so only the ratios of what is asked for count.
        finish: ([red, green, blue]) => [...run(patch, moved(Math.log2(red / green), Math.log2(blue / green)), linear)],
        level: 1,
        warm,
        magenta,
        lightness: 'free',
      })
      return { gains: moved(redStops, blueStops), reached }
    },
  }
}
