// Places told by what comes into the step: how bright it is, or of which hue. Linear `workingRgb`, unbounded.
import { rootsToOklab, workingToLms } from '../../colour/oklab.ts'
import { smoothstep } from '../../math/smoothstep.ts'
import { slider } from '../controls.ts'
import { defineMaskKind, heldEnd } from './mask-kind.ts'

/** Level of 0 EV: mid grey, 18 % reflectance; common practice, no source. */
const midGrey = 0.18
/** Levels count from here on, so that black has one; far below any noise. */
const leastLevel = 2 ** -20
/** Lightness that chroma is measured against at least, so that black has no hue. */
const leastLightness = 2 ** -10
const radians = Math.PI / 180

export const level = defineMaskKind({
  id: 'level',
  title: 'Range of levels',
  version: 1,
  controls: {
    fromEv: slider('From, against mid grey', 'EV', -8, 4, 0.05, -1),
    toEv: slider('To, against mid grey', 'EV', -8, 4, 0.05, 4),
    softnessEv: slider('Softness', 'EV', 0.05, 4, 0.05, 1, { bounded: true }),
  },
  readsMaterial: false,
  derive({ fromEv, toEv, softnessEv }) {
    const [from, to] = [heldEnd(fromEv), heldEnd(toEv)]
    return [from - softnessEv, from, to, to + softnessEv, midGrey, leastLevel]
  },
  weight(pixel, _material, k) {
    const ev = Math.log2(Math.max((pixel[0] + pixel[1] + pixel[2]) / 3, k[5]) / k[4])
    return smoothstep(k[0], k[1], ev) * (1 - smoothstep(k[2], k[3], ev))
  },
})

export const hue = defineMaskKind({
  id: 'hue',
  title: 'Hue',
  version: 1,
  controls: {
    hueDeg: slider('Hue', '°', -180, 180, 1, 80),
    widthDeg: slider('To either side', '°', 2, 180, 1, 35, { bounded: true }),
    softnessDeg: slider('Softness', '°', 2, 90, 1, 20, { bounded: true }),
    /** Chroma over lightness, below which a colour counts as grey. */
    leastChroma: slider('Least chroma', '', 0.005, 0.3, 0.005, 0.03, { bounded: true }),
  },
  readsMaterial: false,
  derive({ hueDeg, widthDeg, softnessDeg, leastChroma }) {
    const [near, far] = [widthDeg, Math.min(widthDeg + softnessDeg, 181)]
    // Past half a turn every hue is inside, and the cosine would come back up.
    const [inner, outer] = [near >= 179 ? -1.5 : Math.cos(near * radians), far > 180 ? -2 : Math.cos(far * radians)]
    const ends = [Math.min(outer, inner - 1e-4), inner] as const
    return [Math.cos(hueDeg * radians), Math.sin(hueDeg * radians), ends[0], ends[1], leastChroma, leastLightness]
  },
  weight(pixel, _material, k) {
    const l = Math.cbrt(workingToLms[0] * pixel[0] + workingToLms[1] * pixel[1] + workingToLms[2] * pixel[2])
    const m = Math.cbrt(workingToLms[3] * pixel[0] + workingToLms[4] * pixel[1] + workingToLms[5] * pixel[2])
    const s = Math.cbrt(workingToLms[6] * pixel[0] + workingToLms[7] * pixel[1] + workingToLms[8] * pixel[2])
    const lightness = rootsToOklab[0] * l + rootsToOklab[1] * m + rootsToOklab[2] * s
    const a = rootsToOklab[3] * l + rootsToOklab[4] * m + rootsToOklab[5] * s
    const b = rootsToOklab[6] * l + rootsToOklab[7] * m + rootsToOklab[8] * s
    const chroma = Math.sqrt(a * a + b * b)
    const coloured = smoothstep(0.5 * k[4], k[4], chroma / Math.max(lightness, k[5]))
    const along = (a * k[0] + b * k[1]) / Math.max(chroma, 1e-9)
    return coloured * smoothstep(k[2], k[3], along)
  },
})
