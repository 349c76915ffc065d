// Output transform: linear `workingRgb` in, encoded `displayRgb` 0…1 of the chosen space out; NaN becomes 0, infinities the ends.
// What lies outside the space loses chroma at constant OKLab lightness and hue, because clipping channels would turn hues.
import glsl from '../../shaders/operations/output-transform.glsl?raw'
import { lmsToWorking, rootsToOklab, workingToLms } from '../colour/oklab.ts'
import { OUTPUT_SPACES, outputSpaceById, type OutputSpaceId } from '../colour/output-space.ts'
import { encode } from '../colour/transfer-curve.ts'
import { multiply } from '../math/mat3.ts'
import { choice } from './controls.ts'
import { defineOperation, type Pixel } from './define.ts'

/** Input is held within ±this before any arithmetic: the largest half float, far beyond white. */
const LIMIT = 65504
/** Halvings of the chroma interval: 2^-22 of the chroma is below one 16-bit code. */
const HALVINGS = 22

/**
 * Channels may fall below 0 by this share of the grey level before chroma gives way, and are then raised to 0. Lines of one hue
 * bow out of a space on their way to blue, by .0076 of the grey level in sRGB: without slack, neighbours would land far apart.
 * It turns hues by at most .7° (measured); in ROMM RGB, whose blue nobody can see, 1 % would turn them by 6°, so there it only
 * covers rounding in 32-bit float and turns them by at most 1.7° (measured over −.3…1.5).
 */
const SLACK: Readonly<Record<OutputSpaceId, number>> = { srgb: 0.01, 'display-p3': 0.01, rec2020: 0.01, romm: 0.0002 }

/** Channels may stand above 1 by what 32-bit float rounds a matrix by, and are then lowered to 1: the same jump lies behind white. */
const CEILING = 1 + 2 ** -20

const hold = (x: number) => (Number.isNaN(x) ? 0 : Math.min(Math.max(x, -LIMIT), LIMIT))
const isWithin = (lowest: number, highest: number, r: number, g: number, b: number) =>
  Math.min(r, g, b) >= lowest && Math.max(r, g, b) <= highest

/** Nine numbers of the pixel in work: three cubic coefficients for each of R, G, B. */
const cubics = new Float64Array(9)
const channelAt = (grey: number, first: number, t: number) =>
  grey + t * (cubics[first] + t * (cubics[first + 1] + t * cubics[first + 2]))

/**
 * Writes the linear RGB with most chroma between grey and the colour whose cone roots are given into `pixel`.
 * Grey of OKLab lightness L has all roots equal to L, so every channel is a cubic in the chroma share t.
 */
function reduceChroma(
  pixel: Pixel,
  fromLms: readonly number[],
  slack: number,
  light: number,
  l: number,
  m: number,
  s: number,
) {
  const dl = l - light
  const dm = m - light
  const ds = s - light
  for (let i = 0; i < 9; i += 3) {
    const forL = fromLms[i]
    const forM = fromLms[i + 1]
    const forS = fromLms[i + 2]
    cubics[i] = 3 * light * light * (forL * dl + forM * dm + forS * ds)
    cubics[i + 1] = 3 * light * (forL * dl * dl + forM * dm * dm + forS * ds * ds)
    cubics[i + 2] = forL * dl * dl * dl + forM * dm * dm * dm + forS * ds * ds * ds
  }
  const grey = light * light * light
  const lowest = -slack * grey
  let high = 1
  let low = isWithin(lowest, CEILING, channelAt(grey, 0, 1), channelAt(grey, 3, 1), channelAt(grey, 6, 1)) ? 1 : 0
  for (let i = 0; low < high && i < HALVINGS; i++) {
    const middle = (low + high) / 2
    if (isWithin(lowest, CEILING, channelAt(grey, 0, middle), channelAt(grey, 3, middle), channelAt(grey, 6, middle)))
      low = middle
    else high = middle
  }
  pixel[0] = Math.min(Math.max(channelAt(grey, 0, low), 0), 1)
  pixel[1] = Math.min(Math.max(channelAt(grey, 3, low), 0), 1)
  pixel[2] = Math.min(Math.max(channelAt(grey, 6, low), 0), 1)
}

export const outputTransform = defineOperation({
  id: 'outputTransform',
  version: 1,
  title: 'Output',
  place: 'output',
  controls: {
    space: choice(
      'Colour space',
      Object.values(OUTPUT_SPACES).map(({ id, title }) => ({ value: id, label: title })),
      'srgb',
    ),
  },
  notIdentityBecause: 'it encodes linear light for a colour space',
  derive(values) {
    const { id, fromWorking, curve } = outputSpaceById(values.space)
    return {
      toSpace: fromWorking,
      toLms: workingToLms,
      rootsToLightness: rootsToOklab.slice(0, 3),
      fromLms: multiply(fromWorking, lmsToWorking),
      slack: SLACK[id],
      ceiling: CEILING,
      slope: curve.slope,
      threshold: curve.threshold,
      exponent: curve.exponent,
      scale: curve.scale,
    }
  },
  apply(pixel, k) {
    const { toSpace, toLms, rootsToLightness } = k
    const red = hold(pixel[0])
    const green = hold(pixel[1])
    const blue = hold(pixel[2])
    pixel[0] = toSpace[0] * red + toSpace[1] * green + toSpace[2] * blue
    pixel[1] = toSpace[3] * red + toSpace[4] * green + toSpace[5] * blue
    pixel[2] = toSpace[6] * red + toSpace[7] * green + toSpace[8] * blue
    if (!isWithin(0, 1, pixel[0], pixel[1], pixel[2])) {
      const l = Math.cbrt(toLms[0] * red + toLms[1] * green + toLms[2] * blue)
      const m = Math.cbrt(toLms[3] * red + toLms[4] * green + toLms[5] * blue)
      const s = Math.cbrt(toLms[6] * red + toLms[7] * green + toLms[8] * blue)
      const light = rootsToLightness[0] * l + rootsToLightness[1] * m + rootsToLightness[2] * s
      if (light > 0 && light < 1) reduceChroma(pixel, k.fromLms, k.slack, light, l, m, s)
      else pixel.fill(light <= 0 ? 0 : 1, 0, 3)
    }
    pixel[0] = encode(k, pixel[0])
    pixel[1] = encode(k, pixel[1])
    pixel[2] = encode(k, pixel[2])
  },
  glsl,
  tolerance: 5e-5,
})
