// Hue bands: eight bands around the circle of OKLCh hues, each with a hue of its own place, and what becomes of it: turned, stronger
// or weaker, lighter or darker; linear `workingRgb` in and out, unbounded. Between neighbours a pixel belongs to both in shares that
// sum to one, so that a change in one band leaves no edge. Near grey hue means nothing, and the bands fade out.
import glsl from '../../shaders/operations/hue-bands.glsl?raw'
import { lmsToWorking, oklabToRoots, rootsToOklab, workingToLms } from '../colour/oklab.ts'
import { smoothstep } from '../math/smoothstep.ts'
import { numbers } from './controls.ts'
import { defineOperation } from './define.ts'

/** One band. Hues and turns in degrees of OKLCh, the others in stops: of chroma, and of light. */
export interface HueBand {
  readonly hueDeg: number
  readonly turnDeg: number
  readonly strengthStops: number
  readonly lightEv: number
}

const BAND_COUNT = 8
/** Numbers of one band, in this order. */
const BAND_KEYS = ['hueDeg', 'turnDeg', 'strengthStops', 'lightEv'] as const
/** Between these C/L the bands come in: below half a per cent a colour has no hue to speak of. */
const GREY_UNTIL = 0.0025
const COLOUR_FROM = 0.0075
/** Neighbours stay at least this far apart for the weights, in radians, so that none divides by nothing (our choice). */
const LEAST_GAP = 1e-4
const RADIANS = Math.PI / 180

/** The bands in a step's numbers, in the order in which they were written. */
export function readBands(written: readonly number[]): HueBand[] {
  return Array.from({ length: BAND_COUNT }, (_, i) => {
    const [hueDeg, turnDeg, strengthStops, lightEv] = written.slice(i * BAND_KEYS.length)
    return { hueDeg, turnDeg, strengthStops, lightEv }
  })
}

/** The numbers of bands for a step. */
export function writeBands(bands: readonly HueBand[]): number[] {
  return bands.flatMap((band) => BAND_KEYS.map((key) => band[key]))
}

/** Degrees brought to 0 … 360. */
export const wholeTurnDeg = (hueDeg: number) => ((hueDeg % 360) + 360) % 360

/** Evenly spread bands that change nothing; the first at 20°, so that eight of them fall near the colours people name (our choice). */
const INITIAL = writeBands(
  Array.from({ length: BAND_COUNT }, (_, i) => ({ hueDeg: 20 + i * 45, turnDeg: 0, strengthStops: 0, lightEv: 0 })),
)

export const hueBands = defineOperation({
  id: 'hueBands',
  version: 1,
  title: 'Hue bands',
  place: 'free',
  controls: { bands: numbers('Bands', INITIAL) },
  derive(values) {
    const bands = readBands(values.bands)
      .map((band) => ({ ...band, hue: wholeTurnDeg(band.hueDeg) * RADIANS }))
      .sort((a, b) => a.hue - b.hue)
    const hues = bands.map(({ hue }) => hue)
    return {
      toLms: workingToLms,
      toOklab: rootsToOklab,
      toRoots: oklabToRoots,
      fromLms: lmsToWorking,
      hues,
      gaps: hues.map((hue, i) => Math.max((hues[i + 1] ?? hues[0] + 2 * Math.PI) - hue, LEAST_GAP)),
      turns: bands.map(({ turnDeg }) => turnDeg * RADIANS),
      strengths: bands.map(({ strengthStops }) => strengthStops),
      lights: bands.map(({ lightEv }) => lightEv),
      greyUntil: GREY_UNTIL,
      colourFrom: COLOUR_FROM,
    }
  },
  apply(pixel, k) {
    const { toLms, toOklab, toRoots, fromLms, hues } = k
    const l = Math.cbrt(toLms[0] * pixel[0] + toLms[1] * pixel[1] + toLms[2] * pixel[2])
    const m = Math.cbrt(toLms[3] * pixel[0] + toLms[4] * pixel[1] + toLms[5] * pixel[2])
    const s = Math.cbrt(toLms[6] * pixel[0] + toLms[7] * pixel[1] + toLms[8] * pixel[2])
    const light = toOklab[0] * l + toOklab[1] * m + toOklab[2] * s
    const a = toOklab[3] * l + toOklab[4] * m + toOklab[5] * s
    const b = toOklab[6] * l + toOklab[7] * m + toOklab[8] * s
    const chroma = Math.hypot(a, b)
    const share = light > 0 ? smoothstep(k.greyUntil, k.colourFrom, chroma / light) : 0
    if (!(share > 0)) return
    const angle = Math.atan2(b, a)
    const hue = angle < 0 ? angle + 2 * Math.PI : angle
    let at = BAND_COUNT - 1
    for (let i = 0; i < BAND_COUNT && hues[i] <= hue; i++) at = i
    const next = (at + 1) % BAND_COUNT
    const behind = hue - hues[at] + (hue < hues[at] ? 2 * Math.PI : 0)
    const toNext = smoothstep(0, k.gaps[at], behind)
    const turn = share * (k.turns[at] + toNext * (k.turns[next] - k.turns[at]))
    const gain = 2 ** (share * (k.strengths[at] + toNext * (k.strengths[next] - k.strengths[at])))
    const ev = 2 ** (share * (k.lights[at] + toNext * (k.lights[next] - k.lights[at])))
    const cos = gain * Math.cos(turn)
    const sin = gain * Math.sin(turn)
    const newA = cos * a - sin * b
    const newB = sin * a + cos * b
    const newL = ev * (toRoots[0] * light + toRoots[1] * newA + toRoots[2] * newB) ** 3
    const newM = ev * (toRoots[3] * light + toRoots[4] * newA + toRoots[5] * newB) ** 3
    const newS = ev * (toRoots[6] * light + toRoots[7] * newA + toRoots[8] * newB) ** 3
    pixel[0] = fromLms[0] * newL + fromLms[1] * newM + fromLms[2] * newS
    pixel[1] = fromLms[3] * newL + fromLms[4] * newM + fromLms[5] * newS
    pixel[2] = fromLms[6] * newL + fromLms[7] * newM + fromLms[8] * newS
  },
  glsl,
  tolerance: 1e-5,
})
