// The chain a frame opens with: neutral and exposure worked out from its facts, and the mapping usual behind its filter.
// Everything automatic is written into the steps as plain values, so that what is seen can be read and changed.
import { RED_BLUE_EXCHANGE } from '../colour/mix-matrices.ts'
import { xyzToWorking } from '../colour/working-space.ts'
import type { FrameFacts } from '../frame/frame.ts'
import { type Mat3, multiply } from '../math/mat3.ts'
import { meanLevel, openingNeutral } from '../operations/neutral.ts'
import type { Chain } from '../operations/step.ts'
import { addStep } from './stack.ts'

/** Mean level an opened frame is brought to (our choice): half a stop over mid grey, because lit foliage is meant to be bright. */
const OPENING_LEVEL = 0.25
/** Automatic exposure stays within ±this, so that a night frame is not drowned in noise (our choice). */
const OPENING_EV_LIMIT = 4
/** Start of the opening chain's shoulder at 1 − this (our choice): the upper stop rolls off, mid tones stay straight. */
const OPENING_SHOULDER = 0.5
/** Contrast of the opening chain (our choice): the veil that infrared optics add leaves frames flat; developed ones had theirs. */
const OPENING_CONTRAST = 0.2
/** From this cut-on on the picture is nearly without colour and an exchange changes nothing that is seen: 780 nm measures .08 stop between foliage and sky, 720 nm .34. */
const MONOCHROME_FROM_NM = 750

/** Exposure in EV, to a twentieth, that brings the frame's mean level at its reference neutral to the opening level; 0 without a positive mean. */
export function openingExposureEv(facts: FrameFacts): number {
  const exposureEv = Math.log2(OPENING_LEVEL / meanLevel(facts, ...openingNeutral(facts)))
  if (!Number.isFinite(exposureEv)) return 0
  return Math.round(Math.min(Math.max(exposureEv, -OPENING_EV_LIMIT), OPENING_EV_LIMIT) * 20) / 20
}

/** Whether red and blue are exchanged at opening: behind long-pass filters that leave colour; not for full spectrum or an unknown filter. */
function opensExchanged(filterNm: FrameFacts['filterNm']): boolean {
  return typeof filterNm === 'number' && filterNm < MONOCHROME_FROM_NM
}

/**
 * The mix a frame opens with, or null for none. A developed file was meant for eyes: its primaries are mixed into working ones,
 * so that it opens in the colours it was made with; rows sum to 1 whatever its profile rounds.
 */
export function openingMix({ developed, cameraToXyz, filterNm }: FrameFacts): Mat3 | null {
  const exchange = opensExchanged(filterNm) ? RED_BLUE_EXCHANGE : null
  if (!developed || !cameraToXyz) return exchange
  const rows = multiply(xyzToWorking, cameraToXyz)
  const whole = rows.map((weight, i) => weight / rows.slice(i - (i % 3), i - (i % 3) + 3).reduce((a, b) => a + b))
  return exchange ? multiply(exchange, whole) : whole
}

/** Whether a frame was developed before and its own neutral stands: it then opens as it looks. */
export function opensAsDeveloped({ developed, referenceNeutral: [u, v] }: FrameFacts): boolean {
  return developed === true && u === 0 && v === 0
}

/** The opening chain: neutral, the mix where there is one, exposure, output in sRGB. */
export function defaultChain(facts: FrameFacts): Chain {
  const [redStops, blueStops] = openingNeutral(facts)
  const rows = openingMix(facts)
  const asDeveloped = opensAsDeveloped(facts)
  // What was clipped when a picture was developed has the colour it was given then.
  let chain = addStep([], 'neutral', { redStops, blueStops, highlightGuard: !asDeveloped })
  if (rows) chain = addStep(chain, 'channelMix', { rows })
  chain = addStep(chain, 'exposureContrast', {
    exposureEv: asDeveloped ? 0 : openingExposureEv(facts),
    contrast: facts.developed ? 0 : OPENING_CONTRAST,
    shoulder: asDeveloped ? 0 : OPENING_SHOULDER,
  })
  return addStep(chain, 'outputTransform')
}

/** Whether a chain is as the frame opened: nothing in it was changed by a person. */
export function isOpeningChain(chain: Chain, facts: FrameFacts): boolean {
  return JSON.stringify(chain) === JSON.stringify(defaultChain(facts))
}
