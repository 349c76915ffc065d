// Weathered boards side by side: grain along them, knots, gaps, and each board its own tone.
import type { Material } from '../light/triplets.ts'
import { hashUnit } from './hash.ts'
import { fbm2, noise2 } from './noise.ts'
import { smoothStep, type Texture } from './surface.ts'

/** Boards run along v and are `boardM` wide; `bare` shows where `coat` has worn off. */
export function createPlanks(coat: Material, bare: Material, seed: number, boardM: number, wear: number): Texture {
  return (u, v, fp, out) => {
    const board = Math.floor(u / boardM)
    const across = u - board * boardM
    const h = hashUnit(board, seed)
    const bend = 0.012 * noise2(v / 0.5, board, seed + 1)
    const grain = fbm2((across + bend) / 0.011, v / 0.32 + 7 * h, 5, seed + 2 + board, fp / 0.011)
    const fine = fbm2(across / 0.004, v / 0.05, 3, seed + 3, fp / 0.004)
    const worn = fbm2(u / 0.12, v / 0.3, 5, seed + 4, fp / 0.12) + 0.4 * grain
    const edge = Math.min(across, boardM - across)
    const gap = smoothStep(0.0035 + fp * 0.5, 0.001, edge)
    out.first = coat
    out.second = bare
    out.share = smoothStep(0.35 - wear, 0.75 - wear, worn)
    out.tone = (0.85 + 0.3 * h) * (1 + 0.16 * grain + 0.1 * fine) * (1 - 0.8 * gap)
    out.relief = 0.22 * grain + 0.14 * fine - 0.7 * gap
    out.hollow = 0.6 * gap
  }
}
