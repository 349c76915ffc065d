// Flagstones in rows of uneven depth: each stone has its own length, tone, tilt and wear; joints hold earth and moss.
import type { Palette } from '../light/triplets.ts'
import { hashUnit } from './hash.ts'
import { fbm2 } from './noise.ts'
import { smoothStep, type SunSlope, type Texture } from './surface.ts'

export interface PavingOptions {
  readonly seed: number
  /** Depth of a row and mean length of a stone in metres. */
  readonly rowM: number
  readonly stoneM: number
  readonly sun: SunSlope
}

export function createPaving(palette: Palette, options: PavingOptions): Texture {
  const { seed, rowM, stoneM, sun } = options
  const limestone = palette.of('limestone')
  const concrete = palette.of('concrete')
  const earth = palette.of('soil')
  const moss = palette.of('grass')
  const edgeOf = (row: number) => (row + 0.3 * (hashUnit(row, seed, 1) - 0.5)) * rowM
  const sideOf = (row: number, i: number) =>
    (i + 0.5 * hashUnit(row, seed, 2) + 0.42 * (hashUnit(row, i, seed, 3) - 0.5)) * stoneM
  return (u, v, fp, out) => {
    const wander = 0.012 * fbm2(u / 0.35, v / 0.35, 3, seed + 4, fp / 0.35)
    const pv = v + wander
    const pu = u - wander
    let row = Math.floor(pv / rowM)
    if (pv < edgeOf(row)) row--
    else if (pv >= edgeOf(row + 1)) row++
    let i = Math.floor(pu / stoneM)
    if (pu < sideOf(row, i)) i--
    else if (pu >= sideOf(row, i + 1)) i++
    const left = pu - sideOf(row, i)
    const right = sideOf(row, i + 1) - pu
    const front = pv - edgeOf(row)
    const back = edgeOf(row + 1) - pv
    const fine = fbm2(u / 0.045, v / 0.045, 7, seed + 6, fp / 0.045)
    const broad = fbm2(u / 0.5, v / 0.5, 4, seed + 7 + row, fp / 0.5)
    const edge = Math.min(left, right, front, back) - 0.009 + 0.005 * fine
    const soft = Math.max(0.004, fp * 0.7)
    const stone = smoothStep(-soft, soft, edge)
    const a = hashUnit(row, i, seed, 5)
    const b = hashUnit(row, i, seed, 6)
    if (stone > 0.5) {
      const step = Math.max(0.004, fp)
      const lump = fbm2(u / 0.16, v / 0.16, 6, seed + 9, fp / 0.16)
      const ahead = fbm2((u + sun.u * step) / 0.16, (v + sun.v * step) / 0.16, 6, seed + 9, fp / 0.16)
      const bevel = 1 - smoothStep(0, 0.022, edge)
      const nearest = Math.min(left, right) < Math.min(front, back)
      const slope = nearest ? (left < right ? -sun.u : sun.u) : front < back ? -sun.v : sun.v
      out.first = limestone
      out.second = concrete
      out.share = Math.max(0, Math.min(1, 0.2 + 0.75 * a + 0.2 * broad))
      out.tone = (1.02 + 0.34 * b) * (1 + 0.16 * broad + 0.13 * fine) * (1 - 0.12 * smoothStep(0.09, 0, edge))
      out.relief = Math.max(
        -0.7,
        Math.min(0.5, ((lump - ahead) * 0.012) / step + 0.32 * slope * bevel + 0.07 * (a - 0.5)),
      )
      out.hollow = 0.15 * bevel
    } else {
      const green = smoothStep(0.05, 0.45, broad + 0.5 * fine)
      out.first = earth
      out.second = moss
      out.share = 0.75 * green
      out.tone = 0.72 * (1 + 0.4 * fine)
      out.relief = -0.55 * (1 - green) * smoothStep(0.05, 0.01, fp)
      out.hollow = 0.45 * (1 - 0.6 * green)
    }
  }
}
