// Brickwork in running bond: every brick has its own tone, rounded edges and chips; joints lie back in their own shadow.
import type { Palette } from '../light/triplets.ts'
import { hash } from './hash.ts'
import { fbm2 } from './noise.ts'
import { smoothStep, type SunSlope, type Texture } from './surface.ts'

const brickM = 0.24
const courseM = 0.078
const jointM = 0.011

/** `pale` 0…1 mixes in limewash and old bricks. */
export function createBrickwork(palette: Palette, seed: number, sun: SunSlope, pale = 0.25): Texture {
  const red = palette.of('brick')
  const dark = palette.of('brickDark')
  const mortar = palette.of('concrete')
  const lime = palette.of('limestone')
  return (u, v, fp, out) => {
    const wobble = 0.004 * fbm2(u / 0.3, v / 0.3, 2, seed + 1, fp / 0.3)
    const row = Math.floor((v + wobble) / courseM)
    const shift = (row & 1) * 0.5 + 0.06 * ((hash(row, seed) & 255) / 255)
    const column = Math.floor((u + wobble) / brickM + shift)
    const h = hash(row, column, seed)
    const du = ((u + wobble) / brickM + shift - column) * brickM
    const dv = v + wobble - row * courseM
    const fine = fbm2(u / 0.035, v / 0.035, 6, seed + 3, fp / 0.035)
    const edge = Math.min(du, brickM - du, dv, courseM - dv) - jointM / 2 + 0.0035 * fine
    const soft = Math.max(0.0025, fp * 0.7)
    const face = smoothStep(-soft, soft, edge)
    const bevel = 1 - smoothStep(0, 0.011, edge)
    const leftRight = du < brickM - du ? -1 : 1
    const belowAbove = dv < courseM - dv ? -1 : 1
    const nearSide = Math.min(du, brickM - du) < Math.min(dv, courseM - dv)
    const toSun = nearSide ? leftRight * sun.u : belowAbove * sun.v
    const inShade = nearSide ? 0 : smoothStep(0.5, -0.5, (dv - courseM + jointM) / jointM)
    const kind = (h & 255) / 255
    const whole = smoothStep(0.06, 0.02, fp)
    if (face > 0.5) {
      out.first = kind < pale ? lime : red
      out.second = dark
      out.share = ((h >>> 8) & 255) / 255
      out.tone = (0.72 + 0.55 * (((h >>> 16) & 255) / 255)) * (1 + 0.22 * fine)
      out.relief = (0.5 * toSun * bevel + 0.35 * fine) * whole
      out.hollow = 0.2 * bevel
    } else {
      out.first = mortar
      out.second = lime
      out.share = 0.5 + 0.4 * fine
      out.tone = 0.8 * (1 + 0.3 * fine)
      out.relief = -0.75 * whole * (0.4 + 0.6 * inShade)
      out.hollow = 0.45
    }
  }
}
