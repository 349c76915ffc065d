// A casement window: painted frame and glazing bars before dark glass that mirrors a little sky, with a curtain behind.
import type { Palette } from '../light/triplets.ts'
import { type Brush, createBrush, light, lightMix, scale } from './brush.ts'
import { fbm2, noise2 } from './noise.ts'
import type { Opening } from './opening.ts'
import type { Niche } from './recess.ts'
import { smoothStep } from './surface.ts'

export interface SashOptions {
  readonly opening: Opening
  readonly panesAcross: number
  readonly panesUp: number
  readonly seed: number
  /** How far curtains are drawn, 0…1. */
  readonly curtain: number
}

const frameM = 0.055
const barM = 0.014

/** Returns a function that sets the brush for a point on the window. `sun`, `sky`, `bounce`: light arriving there. */
export function createSash(
  palette: Palette,
  options: SashOptions,
): (niche: Niche, sun: number, sky: number, bounce: number, brush: Brush) => void {
  const { opening: o, panesAcross, panesUp, seed, curtain } = options
  const paint = palette.of('paint')
  const wood = palette.of('timber')
  const cloth = palette.of('cotton')
  const white = palette.of('white')
  const glass = createBrush()
  const middle = (o.x0 + o.x1) / 2
  return (niche, sun, sky, bounce, brush) => {
    const { x, y, fp } = niche
    const leaf = x < middle ? x - o.x0 : o.x1 - x
    const half = middle - o.x0
    const frame = Math.min(leaf - frameM, y - o.y0 - frameM, o.y1 - y - frameM, half - leaf - 0.03)
    const paneU = ((leaf - frameM) / (half - frameM - 0.03)) * (panesAcross / 2)
    const paneV = ((y - o.y0 - frameM) / (o.y1 - o.y0 - 2 * frameM)) * panesUp
    const widthM = (half - frameM - 0.03) / (panesAcross / 2)
    const heightM = (o.y1 - o.y0 - 2 * frameM) / panesUp
    const barU = Math.abs(paneU - Math.round(paneU)) * widthM - barM
    const barV = Math.abs(paneV - Math.round(paneV)) * heightM - barM
    const clear = Math.min(frame, barU, barV)
    const bar = 1 - smoothStep(-fp * 0.6, fp * 0.6, clear)
    const pane = hashPane(Math.floor(paneU) * (x < middle ? 1 : -1), Math.floor(paneV), seed)
    const tiltU = 0.05 * pane + 0.012 * noise2(x / 0.09, y / 0.14, seed + 2)
    const up = (y - 1.6) * 0.09 + 0.35 + tiltU + 0.02 * noise2(x / 0.11, y / 0.09, seed + 3)
    const mirrored = smoothStep(0.3, 0.52, up + 0.05 * fbm2(x / 0.2 + pane * 9, y / 0.2, 3, seed + 4))
    light(glass, white, 0.004 + 0.012 * (1 - mirrored), 0.02 + 0.24 * mirrored)
    const drape = smoothStep(curtain * half, curtain * half - 0.03, leaf + 0.03 * noise2(y / 0.5, 3, seed + 5))
    if (drape > 0) {
      const fold = 0.55 + 0.45 * noise2(leaf / 0.045, y / 1.6, seed + 6)
      const lit = 0.1 * sun * smoothStep(-0.01, 0.04, clear)
      light(brush, cloth, (0.02 + lit + 0.1 * bounce) * fold, 0.16 * sky * fold)
      glass.r += brush.r * drape
      glass.g += brush.g * drape
      glass.b += brush.b * drape
    }
    const bevel = smoothStep(-0.012, 0, clear) * bar
    const worn = smoothStep(0.25, 0.55, fbm2(x / 0.06, y / 0.2, 5, seed + 7, fp / 0.06))
    lightMix(brush, paint, wood, 0.6 * worn, sun * (1 - 0.35 * bevel) + bounce, sky)
    scale(brush, 0.92 + 0.08 * noise2(x / 0.02, y / 0.3, seed + 8))
    brush.r = brush.r * bar + glass.r * (1 - bar)
    brush.g = brush.g * bar + glass.g * (1 - bar)
    brush.b = brush.b * bar + glass.b * (1 - bar)
    brush.sun = bar > 0.5 ? sun : 0
  }
}

function hashPane(i: number, j: number, seed: number): number {
  return noise2(i * 7.3 + 0.5, j * 5.1 + 0.5, seed)
}
