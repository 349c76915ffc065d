// How likely a colour of the frame is truly neutral: neutral things (cloud, stone, paving, paint) are bright, even, in one
// piece, and lie between foliage and sky. No single sign is dependable; the weights come from simulated scenes.
import type { ColourRange } from './colour-range.ts'
import type { ModeFeatures } from './mode-features.ts'
import type { Mode } from './modes.ts'
import type { RememberedGrey } from './suggestion.ts'

/** Where neutrals lie from the foliage end (0) to the sky end (1). Tuned on simulated scenes, like all weights here. */
export const neutralAlong = 0.65
const alongTolerance = 0.02
const leastBrightStops = -4
const weights = {
  bright: 1.3,
  area: 0.05,
  along: -3.5,
  texture: -2.2,
  coherence: 0.5,
  averages: -0.25,
  remembered: -0.5,
}

/** Direction in (u, v) along which light moves greys, and how far it does along and across, in stops. */
const lightAxis = [0.65, -0.76] as const
const rememberedSpread = { along: 0.15, across: 0.05 }

/** Squared distance from a remembered grey in its own spread. */
function rememberedDistance({ u, v }: Mode, [u0, v0]: RememberedGrey): number {
  const along = (u - u0) * lightAxis[0] + (v - v0) * lightAxis[1]
  const across = (u - u0) * lightAxis[1] - (v - v0) * lightAxis[0]
  return Math.min((along / rememberedSpread.along) ** 2 + (across / rememberedSpread.across) ** 2, 9)
}

/** The score of a mode; `shadesOfGrey` is the frame's own average by that rule. */
export function scoreMode(
  mode: Mode,
  features: ModeFeatures,
  range: ColourRange,
  shadesOfGrey: readonly [number, number],
  remembered?: RememberedGrey,
): number {
  const { brightStops, area, along, texture, coherence } = features
  const average = Math.hypot(mode.u - shadesOfGrey[0], mode.v - shadesOfGrey[1]) / range.spread
  return (
    weights.bright * Math.max(leastBrightStops, brightStops) +
    weights.area * Math.log2(area + 1e-4) +
    weights.along * Math.max(0, Math.abs(along - neutralAlong) - alongTolerance) +
    weights.texture * texture +
    weights.coherence * coherence +
    weights.averages * average +
    (remembered ? weights.remembered * rememberedDistance(mode, remembered) : 0)
  )
}
