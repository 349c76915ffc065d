// Tonal balance: linear `workingRgb` in and out, unbounded. Shadows, midtones and highlights take colour of their own, as
// mixed light asks for; the level of a pixel stays, and every channel of a grey ramp still rises at any setting.
import glsl from '../../shaders/operations/tonal-balance.glsl?raw'
import { slider } from './controls.ts'
import { defineOperation } from './define.ts'

/** Level from which the pivots are counted: mid grey, 18 % reflectance; common practice, no source. */
const MID_GREY = 0.18
/** Most a channel may be raised or lowered, in stops: with the weights' slope of at most ½ ln 2 per stop no channel turns back. */
const MOST_STOPS = 1

const amount = (low: string, high: string, range: string) =>
  slider(range, 'stop', -MOST_STOPS, MOST_STOPS, 0.01, 0, {
    bounded: true,
    group: `${low[0].toUpperCase()}${low.slice(1)} to ${high}`,
    ends: [low, high],
    inRoom: true,
  })
const borders = 'Borders, from mid grey'

const weights = new Float64Array(3)

/**
 * Weights of shadows, midtones and highlights at a linear level, in place of the last ones: logistic in the log of the level,
 * so all are smooth everywhere, and they sum to 1.
 */
export function weigh(level: number, shadowsEnd: number, highlightsBegin: number): Float64Array {
  const leaving = (level / shadowsEnd) ** 2
  const entering = (level / highlightsBegin) ** 2
  weights[0] = 1 / (1 + leaving)
  weights[2] = entering / (1 + entering)
  weights[1] = 1 - weights[0] - weights[2]
  return weights
}

export const tonalBalance = defineOperation({
  id: 'tonalBalance',
  version: 1,
  title: 'Tonal balance',
  place: 'free',
  controls: {
    shadowRed: amount('cyan', 'red', 'shadows'),
    midtoneRed: amount('cyan', 'red', 'midtones'),
    highlightRed: amount('cyan', 'red', 'highlights'),
    shadowGreen: amount('magenta', 'green', 'shadows'),
    midtoneGreen: amount('magenta', 'green', 'midtones'),
    highlightGreen: amount('magenta', 'green', 'highlights'),
    shadowBlue: amount('yellow', 'blue', 'shadows'),
    midtoneBlue: amount('yellow', 'blue', 'midtones'),
    highlightBlue: amount('yellow', 'blue', 'highlights'),
    shadowsEndEv: slider('Shadows end', 'EV', -6, 2, 0.1, -2, { group: borders }),
    highlightsBeginEv: slider('Highlights begin', 'EV', -4, 4, 0.1, 1, { group: borders }),
  },
  derive(values) {
    const { shadowsEndEv, highlightsBeginEv } = values
    const pivot = (ev: number) => MID_GREY * 2 ** ev
    return {
      shadows: [values.shadowRed, values.shadowGreen, values.shadowBlue],
      midtones: [values.midtoneRed, values.midtoneGreen, values.midtoneBlue],
      highlights: [values.highlightRed, values.highlightGreen, values.highlightBlue],
      /** Levels at which neighbours weigh the same; in order, so that no weight falls below 0. */
      shadowsEnd: pivot(Math.min(shadowsEndEv, highlightsBeginEv)),
      highlightsBegin: pivot(Math.max(shadowsEndEv, highlightsBeginEv)),
    }
  },
  apply(pixel, { shadows, midtones, highlights, shadowsEnd, highlightsBegin }) {
    const level = Math.max((pixel[0] + pixel[1] + pixel[2]) / 3, 0)
    weigh(level, shadowsEnd, highlightsBegin)
    let before = 0
    let after = 0
    for (let c = 0; c < 3; c++) {
      const gain = 2 ** (weights[0] * shadows[c] + weights[1] * midtones[c] + weights[2] * highlights[c])
      before += Math.max(pixel[c], 0)
      pixel[c] *= gain
      after += Math.max(pixel[c], 0)
    }
    // Noise below 0 is left out of the level here: with it the factor could grow without limit.
    const hold = after > 0 ? before / after : 1
    pixel[0] *= hold
    pixel[1] *= hold
    pixel[2] *= hold
  },
  glsl,
  tolerance: 2e-6,
})
