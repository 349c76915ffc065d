// Black and white: linear `workingRgb` in, grey or toned `workingRgb` out, unbounded. The weights say how much brighter the
// light of one channel counts than the mean of all, so a neutral keeps its level whatever they are, of any sign.
import glsl from '../../shaders/operations/black-and-white.glsl?raw'
import { lmsToWorking, oklabToRoots } from '../colour/oklab.ts'
import { smoothstep } from '../math/smoothstep.ts'
import { slider, toggle } from './controls.ts'
import { defineOperation } from './define.ts'

/** OKLab chroma of a tone at full strength, mid lightness (our choice): a strong sepia is about half of it. */
const MOST_CHROMA = 0.12
/** Half the width in OKLab lightness over which the shadow tone gives way to the highlight tone (our choice). */
const TURN_HALF_WIDTH = 0.3

/** The shares of R, G, B in the grey; they sum to 1 for any weights in percent. */
export function greyShares(red: number, green: number, blue: number): [red: number, green: number, blue: number] {
  const rest = (1 - (red + green + blue) / 100) / 3
  return [red / 100 + rest, green / 100 + rest, blue / 100 + rest]
}

const weight = (label: string) => slider(label, '%', -200, 200, 1, 0, { group: 'Weights over the mean' })
const hue = (group: string, initialDeg: number) => slider('Hue', '°', 0, 360, 1, initialDeg, { group })
const strength = (group: string) => slider('Strength', '%', 0, 100, 1, 0, { bounded: true, group })

function toneOf(hueDeg: number, strengthPercent: number): [a: number, b: number] {
  const chroma = (MOST_CHROMA * strengthPercent) / 100
  return [chroma * Math.cos((hueDeg * Math.PI) / 180), chroma * Math.sin((hueDeg * Math.PI) / 180)]
}

export const blackAndWhite = defineOperation({
  id: 'blackAndWhite',
  version: 1,
  title: 'Black and white',
  place: 'free',
  controls: {
    red: weight('Red'),
    green: weight('Green'),
    blue: weight('Blue'),
    shadowHueDeg: hue('Shadow tone', 250),
    shadowStrength: strength('Shadow tone'),
    highlightHueDeg: hue('Highlight tone', 80),
    highlightStrength: strength('Highlight tone'),
    turn: slider('Tones meet at lightness', '', 0, 1, 0.01, 0.5, { bounded: true }),
    toneWhite: toggle('Tone white too', false),
  },
  notIdentityBecause: 'it takes the colour away',
  derive(values) {
    return {
      shares: greyShares(values.red, values.green, values.blue),
      shadowTone: toneOf(values.shadowHueDeg, values.shadowStrength),
      highlightTone: toneOf(values.highlightHueDeg, values.highlightStrength),
      turnFrom: values.turn - TURN_HALF_WIDTH,
      turnTo: values.turn + TURN_HALF_WIDTH,
      whiteToned: values.toneWhite,
      toned: values.shadowStrength > 0 || values.highlightStrength > 0,
      toRoots: oklabToRoots,
      fromLms: lmsToWorking,
    }
  },
  apply(pixel, k) {
    const { shares, shadowTone, highlightTone, toRoots, fromLms } = k
    const grey = shares[0] * pixel[0] + shares[1] * pixel[1] + shares[2] * pixel[2]
    pixel.fill(grey, 0, 3)
    if (!k.toned) return
    // OKLab lightness of a grey is its cube root.
    const light = Math.cbrt(grey)
    const inside = Math.min(Math.max(light, 0), 1)
    // Towards black chroma falls with lightness, or brightness would no longer rise.
    const reach = k.whiteToned ? 1 - (1 - inside) ** 4 : 4 * inside * (1 - inside)
    const high = smoothstep(k.turnFrom, k.turnTo, light)
    const a = reach * (shadowTone[0] * (1 - high) + highlightTone[0] * high)
    const b = reach * (shadowTone[1] * (1 - high) + highlightTone[1] * high)
    const l = (light + toRoots[1] * a + toRoots[2] * b) ** 3
    const m = (light + toRoots[4] * a + toRoots[5] * b) ** 3
    const s = (light + toRoots[7] * a + toRoots[8] * b) ** 3
    pixel[0] = fromLms[0] * l + fromLms[1] * m + fromLms[2] * s
    pixel[1] = fromLms[3] * l + fromLms[4] * m + fromLms[5] * s
    pixel[2] = fromLms[6] * l + fromLms[7] * m + fromLms[8] * s
  },
  glsl,
  tolerance: 5e-6,
})
