// A wall of rough field stones: uneven shapes in lime mortar, each rounded towards its edges, with lichen on some.
import type { Palette } from '../light/triplets.ts'
import { type Cells, cells2, fbm2 } from './noise.ts'
import { smoothStep, type SunSlope, type Texture } from './surface.ts'

/** `stoneM` = usual width of a stone. */
export function createRubble(palette: Palette, seed: number, stoneM: number, sun: SunSlope): Texture {
  const rock = palette.of('rock')
  const limestone = palette.of('limestone')
  const mortar = palette.of('concrete')
  const lichen = palette.of('lichen')
  const here: Cells = { f1: 0, f2: 0, id: 0 }
  const ahead: Cells = { f1: 0, f2: 0, id: 0 }
  return (u, v, fp, out) => {
    const warpU = 0.13 * fbm2(u / 0.3, v / 0.3, 3, seed + 1, fp / 0.3)
    const warpV = 0.13 * fbm2(u / 0.3, v / 0.3, 3, seed + 2, fp / 0.3)
    const x = u / stoneM + warpU
    const y = v / (stoneM * 0.62) + warpV
    cells2(x, y, seed, here)
    const gap = here.f2 - here.f1
    const fine = fbm2(u / 0.05, v / 0.05, 6, seed + 4, fp / 0.05)
    const a = (here.id & 255) / 255
    const b = ((here.id >>> 8) & 255) / 255
    if (gap + 0.04 * fine > 0.1) {
      const step = 0.02
      cells2(x + (sun.u * step) / stoneM, y + (sun.v * step) / (stoneM * 0.62), seed, ahead)
      const round = Math.min(0.45, ahead.f2 - ahead.f1) - Math.min(0.45, gap)
      const spots = 0.7 * smoothStep(0.38, 0.75, fbm2(u / 0.13, v / 0.13, 5, seed + 9, fp / 0.13) + 0.25 * (b - 0.5))
      out.first = spots > 0.4 ? lichen : rock
      out.second = limestone
      out.share = spots > 0.4 ? 1 - spots : a
      out.tone = (0.95 + 0.4 * b) * (1 + 0.22 * fine)
      out.relief = Math.max(-0.8, Math.min(0.6, -3.2 * round + 0.4 * fine))
      out.hollow = 0.4 * smoothStep(0.3, 0.1, gap)
    } else {
      out.first = mortar
      out.second = limestone
      out.share = 0.4
      out.tone = 0.85 * (1 + 0.3 * fine)
      out.relief = -0.45 + 0.3 * fine
      out.hollow = 0.5
    }
  }
}
