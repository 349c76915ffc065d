// Exposure, contrast and highlight shoulder: linear `workingRgb` in and out, unbounded below; with a shoulder the largest
// channel stays below 1. All three scale a pixel by one factor, so hue and relative chroma never move.
import glsl from '../../shaders/operations/exposure-contrast.glsl?raw'
import { slider } from './controls.ts'
import { defineOperation } from './define.ts'

/** Level that contrast leaves in place when the pivot is 0 EV: mid grey, 18 % reflectance; common practice, no source. */
const MID_GREY = 0.18
/** Contrast acts down to this many times the pivot; below, its factor stays, so that noise around 0 is not blown up. Common practice, no source. */
const CONTRAST_FLOOR = 2 ** -10

export const exposureContrast = defineOperation({
  id: 'exposureContrast',
  version: 1,
  title: 'Exposure and contrast',
  place: 'free',
  controls: {
    exposureEv: slider('Exposure', 'EV', -4, 4, 0.05, 0),
    contrast: slider('Contrast', '', -1, 1, 0.01, 0),
    pivotEv: slider('Contrast pivot from mid grey', 'EV', -4, 3, 0.05, 0),
    shoulder: slider('Highlight shoulder', '', 0, 1, 0.01, 0, { bounded: true }),
  },
  derive(values) {
    return {
      exposureGain: 2 ** values.exposureEv,
      /** Slope in log–log is 2^contrast; one less is the power of the factor. */
      contrastPower: 2 ** values.contrast - 1,
      pivot: MID_GREY * 2 ** values.pivotEv,
      contrastFloor: CONTRAST_FLOOR,
      /** Where the shoulder leaves the straight line. */
      knee: 1 - values.shoulder,
      bent: values.shoulder > 0,
    }
  },
  apply(pixel, k) {
    const mean = (k.exposureGain * (pixel[0] + pixel[1] + pixel[2])) / 3
    let factor = k.exposureGain * Math.max(mean / k.pivot, k.contrastFloor) ** k.contrastPower
    const largest = factor * Math.max(pixel[0], pixel[1], pixel[2])
    if (k.bent && largest > k.knee) {
      const room = 1 - k.knee
      factor *= (k.knee + room * (1 - Math.exp((k.knee - largest) / room))) / largest
    }
    pixel[0] *= factor
    pixel[1] *= factor
    pixel[2] *= factor
  },
  glsl,
  tolerance: 5e-6,
})
