// How likely a colour of the frame is truly neutral. Neutral things (cloud, stone, paving, paint) are bright, lie towards the
// sky end of the frame's colours and to one side of the line that foliage and sky make. No sign alone is dependable; the
// weights were chosen on simulated scenes: the same within a fifth whichever sensor or half of the scenes they came from.
// Clear sky is told by being smooth and dim at its end: where everything lies in shade it would often come first.
import { smoothstep } from '../../math/smoothstep.ts'
import type { ModeFeatures } from './mode-features.ts'
import type { Mode } from './modes.ts'
import type { RememberedGrey } from './suggestion.ts'

export interface ScoreWeights {
  readonly bright: number
  readonly area: number
  readonly along: number
  readonly bulge: number
  readonly sky: number
  readonly remembered: number
}

export const neutralWeights: ScoreWeights = { bright: 1.3, area: 0.25, along: 5, bulge: 25, sky: -2, remembered: -1 }
/** For neutrals that are neither bright nor near the sky end, such as asphalt or a wall in shade. */
export const bulgeWeights: ScoreWeights = { ...neutralWeights, bright: 0, along: 0 }

/** Beyond these a sign says no more. */
const leastBrightStops = -4
const bulgeLimits = [-0.1, 0.12] as const
const mostRemembered = 9

/** Where clear sky begins and is certain: texture and darkness in stops, and place along (tuned on simulated open shade at 720 nm). */
const skyTexture = [0.02, 0.05] as const
const skyDarkness = [0.2, 0.6] as const
const skyAlong = [0.6, 0.9] as const

/** Direction in (u, v) along which light moves greys, and how far it does along and across, in stops (simulated). */
const lightAxis = [0.65, -0.76] as const
const rememberedSpread = { along: 0.15, across: 0.05 }

/** Squared distance from a remembered grey in its own spread. */
function rememberedDistance({ u, v }: Mode, [u0, v0]: RememberedGrey): number {
  const along = (u - u0) * lightAxis[0] + (v - v0) * lightAxis[1]
  const across = (u - u0) * lightAxis[1] - (v - v0) * lightAxis[0]
  return Math.min((along / rememberedSpread.along) ** 2 + (across / rememberedSpread.across) ** 2, mostRemembered)
}

/** How much a colour looks like clear sky, 0…1. An overcast sky is bright, and neutral. */
function skyLikeness({ texture, brightStops, along }: ModeFeatures): number {
  return (
    (1 - smoothstep(...skyTexture, texture)) * smoothstep(...skyDarkness, -brightStops) * smoothstep(...skyAlong, along)
  )
}

/** The score of a mode; comparable within one frame only. */
export function scoreMode(
  mode: Mode,
  features: ModeFeatures,
  weights: ScoreWeights,
  remembered?: RememberedGrey,
): number {
  const { brightStops, area, along, bulge } = features
  return (
    weights.bright * Math.max(leastBrightStops, brightStops) +
    weights.area * Math.log2(area + 1e-4) +
    weights.along * along +
    weights.bulge * Math.min(Math.max(bulge, bulgeLimits[0]), bulgeLimits[1]) +
    weights.sky * skyLikeness(features) +
    (remembered ? weights.remembered * rememberedDistance(mode, remembered) : 0)
  )
}
