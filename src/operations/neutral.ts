// Neutral: `cameraRgb` in, balanced `workingRgb` out, unbounded. What the gains name as neutral becomes R = G = B.
// Gains are log2 ratios relative to green and have no limits, because infrared neutrals lie far outside any kelvin scale.
import glsl from '../../shaders/operations/neutral.glsl?raw'
import type { FrameFacts } from '../frame/frame.ts'
import { diagonal } from '../math/mat3.ts'
import { smoothstep } from '../math/smoothstep.ts'
import { numbers, slider, toggle } from './controls.ts'
import { defineOperation, type ValuesOf } from './define.ts'

/**
 * Between these largest raw levels a pixel fades to grey (our choice): over .4 stop, because a quick passage cuts white islands with
 * hard edges out of tinted clouds; done before 1 for sensors with a soft ceiling; binary fractions, so that 32-bit differences are exact.
 */
export const GUARD_FROM = 3 / 4
export const GUARD_TO = 63 / 64

/** The frame's mean level, over channels and unclipped pixels, with these gains on and green at 1; linear, 0…1 and beyond. */
export function meanLevel(facts: FrameFacts, redStops: number, blueStops: number): number {
  const [red, green, blue] = facts.meanCameraRgb
  return (red * 2 ** redStops + green + blue * 2 ** blueStops) / 3
}

/**
 * The factor on all gains that keeps the frame's mean level where it is at the reference neutral, so that another neutral
 * changes colour and not exposure. 1 where the frame has no positive mean.
 */
function brightnessHold(facts: FrameFacts, redStops: number, blueStops: number): number {
  const hold = meanLevel(facts, ...openingNeutral(facts)) / meanLevel(facts, redStops, blueStops)
  return hold > 0 && Number.isFinite(hold) ? hold : 1
}

/** Gains (red, blue) in stops relative to green that make the frame's reference neutral grey. */
export function openingNeutral(facts: FrameFacts): [redStops: number, blueStops: number] {
  const [log2RedGreen, log2BlueGreen] = facts.referenceNeutral
  return [-log2RedGreen, -log2BlueGreen]
}

export const neutral = defineOperation({
  id: 'neutral',
  version: 1,
  title: 'Neutral',
  place: 'neutral',
  controls: {
    redStops: slider('Red to green', 'stop', -4, 4, 0.01, 0),
    blueStops: slider('Blue to green', 'stop', -4, 4, 0.01, 0),
    holdBrightness: toggle('Hold brightness', true),
    highlightGuard: toggle('Keep clipped highlights grey', true),
    /** Red and blue before a shift as seen, and after it: see `seenStart`. */
    seenFrom: numbers('Neutral before the shift as seen', [], { variable: true }),
  },
  notIdentityBecause: 'brightness is held at the level of the opening neutral, and clipped pixels are made grey',
  derive(values, facts) {
    const hold = values.holdBrightness ? brightnessHold(facts, values.redStops, values.blueStops) : 1
    return {
      gains: [hold * 2 ** values.redStops, hold, hold * 2 ** values.blueStops],
      guarded: values.highlightGuard,
      guardFrom: GUARD_FROM,
      guardTo: GUARD_TO,
    }
  },
  apply(pixel, k) {
    const red = pixel[0] * k.gains[0]
    const green = pixel[1] * k.gains[1]
    const blue = pixel[2] * k.gains[2]
    const grey = k.guarded ? smoothstep(k.guardFrom, k.guardTo, pixel[3]) : 0
    const level = grey * Math.max(red, green, blue)
    pixel[0] = red * (1 - grey) + level
    pixel[1] = green * (1 - grey) + level
    pixel[2] = blue * (1 - grey) + level
  },
  linear: ({ gains }) => diagonal(gains),
  glsl,
  tolerance: 1e-6,
})

/**
 * The gains from which warmth as seen counts: those before the last shift, or the present ones once the neutral was set in any
 * other way since. Kept in the step, so that undo, another frame and a saved edit all find the shift as it was.
 */
export function seenStart(values: ValuesOf<typeof neutral.controls>): { redStops: number; blueStops: number } {
  const [redStops, blueStops, shiftedRed, shiftedBlue] = values.seenFrom
  const isOurs = values.redStops === shiftedRed && values.blueStops === shiftedBlue
  return isOurs ? { redStops, blueStops } : { redStops: values.redStops, blueStops: values.blueStops }
}
