// Colour strength: OKLCh chroma times one factor, hue and lightness kept; linear `workingRgb` in and out, unbounded.
// Behind 720 nm colours must grow some eightfold and noise grows with them, so the growth bends off where a level's chroma noise,
// carried from the sensor through the linear part of the chain, would exceed what is allowed.
import glsl from '../../shaders/operations/colour-strength.glsl?raw'
import { lmsToWorking, rootsToOklab, workingToLms } from '../colour/oklab.ts'
import type { FrameFacts } from '../frame/frame.ts'
import { determinant, IDENTITY, invert, type Mat3, multiply, transform } from '../math/mat3.ts'
import { slider } from './controls.ts'
import { defineOperation } from './define.ts'

/** Levels below this count as it, so that no black pixel divides by nothing (our choice). */
const DARKEST = 2 ** -14
/** A way here with a smaller determinant than this says nothing about the sensor's levels (our choice). */
const LEAST_DETERMINANT = 1e-6

/**
 * Chroma noise of one sensor pixel near grey: the variance of a/L and b/L, in the mean of both, at level Y is
 * `photon / Y + read / Y²`, Y linear, 1 white. Near grey they are linear in the channels, whose variances add by squared weights.
 */
function chromaNoise({ noise }: FrameFacts, toHere: Mat3): { photon: number; read: number } {
  const { fullScaleElectrons, readNoiseElectrons } = noise
  const way = Math.abs(determinant(toHere)) < LEAST_DETERMINANT ? IDENTITY : toHere
  const sensorPerLevel = transform(invert(way), [1, 1, 1]).map((level) => Math.max(level, 0))
  // Rows 1 and 2 are a and b per sensor channel; a third is the slope of a cube root at 1, squared and halved: 18.
  const opponent = multiply(rootsToOklab, multiply(workingToLms, way))
  const weights = [0, 1, 2].map((channel) => (opponent[3 + channel] ** 2 + opponent[6 + channel] ** 2) / 18)
  return {
    photon: weights.reduce((sum, weight, i) => sum + weight * sensorPerLevel[i], 0) / fullScaleElectrons,
    read: weights.reduce((sum, weight) => sum + weight) * (readNoiseElectrons / fullScaleElectrons) ** 2,
  }
}

/** The factor on chroma that reaches the allowed noise at a level, at least 1: below it colours grow as asked. */
export function strengthLimit(k: { photon: number; read: number; allowed: number }, level: number): number {
  const held = Math.max(level, DARKEST)
  return Math.max(k.allowed / Math.sqrt(k.photon / held + k.read / held ** 2), 1)
}

export const colourStrength = defineOperation({
  id: 'colourStrength',
  version: 1,
  title: 'Colour strength',
  place: 'free',
  controls: {
    strengthStops: slider('Strength', 'stop', -4, 4, 0.05, 0),
    noisePercent: slider('Colour noise allowed', '%', 0.5, 20, 0.5, 6),
  },
  derive({ strengthStops, noisePercent }, facts, toHere = IDENTITY) {
    return {
      toLms: workingToLms,
      rootsToLightness: rootsToOklab.slice(0, 3),
      fromLms: lmsToWorking,
      strength: 2 ** strengthStops,
      allowed: Math.max(noisePercent, 0) / 100,
      darkest: DARKEST,
      ...chromaNoise(facts, toHere),
    }
  },
  apply(pixel, k) {
    const { toLms, rootsToLightness, fromLms } = k
    const l = Math.cbrt(toLms[0] * pixel[0] + toLms[1] * pixel[1] + toLms[2] * pixel[2])
    const m = Math.cbrt(toLms[3] * pixel[0] + toLms[4] * pixel[1] + toLms[5] * pixel[2])
    const s = Math.cbrt(toLms[6] * pixel[0] + toLms[7] * pixel[1] + toLms[8] * pixel[2])
    const light = rootsToLightness[0] * l + rootsToLightness[1] * m + rootsToLightness[2] * s
    let gain = k.strength
    if (gain > 1) {
      const growth = gain - 1
      const room = strengthLimit(k, light ** 3) - 1
      gain = 1 + (growth * room) / Math.max(Math.hypot(growth, room), 1e-9)
    }
    // Grey of this lightness has all roots equal to it, so chroma is what they are away from it.
    const newL = (light + gain * (l - light)) ** 3
    const newM = (light + gain * (m - light)) ** 3
    const newS = (light + gain * (s - light)) ** 3
    pixel[0] = fromLms[0] * newL + fromLms[1] * newM + fromLms[2] * newS
    pixel[1] = fromLms[3] * newL + fromLms[4] * newM + fromLms[5] * newS
    pixel[2] = fromLms[6] * newL + fromLms[7] * newM + fromLms[8] * newS
  },
  glsl,
  tolerance: 1e-5,
})
