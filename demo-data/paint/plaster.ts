// Old lime plaster on brick: trowel marks, grain, rain streaks, hair cracks, and places where it has come off, more of them
// near the ground, with a broken lip that casts a small shadow on the bricks.
import type { Palette } from '../light/triplets.ts'
import { createBrickwork } from './brickwork.ts'
import { type Cells, cells2, fbm2, noise2 } from './noise.ts'
import { smoothStep, type SunSlope, type Texture } from './surface.ts'

/** `wear` 0…1: how much has come off. `heightM` = where rain streaks begin. */
export function createPlaster(palette: Palette, seed: number, sun: SunSlope, wear: number, heightM: number): Texture {
  const plaster = palette.of('plaster')
  const stain = palette.of('soil')
  const brick = createBrickwork(palette, seed + 40, sun)
  const crack: Cells = { f1: 0, f2: 0, id: 0 }
  const loss = (u: number, v: number, fp: number) =>
    fbm2(u / 0.95, v / 0.7, 4, seed + 8, fp / 0.95) +
    0.022 * fbm2(u / 0.05, v / 0.05, 3, seed + 9, fp / 0.05) +
    0.42 * Math.exp(-v / 0.35) -
    0.3 * smoothStep(0.5, 2.5, v) +
    0.1
  return (u, v, fp, out) => {
    const limit = 0.86 - 0.5 * wear
    const off = loss(u, v, fp)
    if (off > limit) {
      brick(u, v, fp, out)
      const lip = loss(u + sun.u * 0.028, v + sun.v * 0.028, fp)
      const edge = smoothStep(limit, limit + 0.02, off)
      if (lip < limit) out.relief = -0.85
      out.hollow = Math.max(out.hollow, 0.5 * (1 - smoothStep(limit, limit + 0.12, off)))
      out.tone *= 0.75 + 0.25 * edge
      return
    }
    const step = Math.max(0.003, fp)
    const lumps = fbm2(u / 0.07, v / 0.07, 6, seed, fp / 0.07)
    const ahead = fbm2((u + sun.u * step) / 0.07, (v + sun.v * step) / 0.07, 6, seed, fp / 0.07)
    const trowel =
      noise2(u / 0.45 + 0.4 * lumps, v / 0.22, seed + 5) -
      noise2((u + sun.u * 0.03) / 0.45 + 0.4 * lumps, (v + sun.v * 0.03) / 0.22, seed + 5)
    const broad = fbm2(u / 1.3, v / 1.1, 4, seed + 3, fp)
    const streak = fbm2(u / 0.11, v / 1.9, 4, seed + 6, fp / 0.11) * smoothStep(heightM - 2.6, heightM, v)
    const damp = smoothStep(0.75, 0, v + 0.3 * broad)
    const cracked = smoothStep(0.02, 0.22, broad + 0.25 * noise2(u / 0.5, v / 0.5, seed + 14))
    let line = 0
    if (cracked > 0) {
      cells2(u / 0.85 + 0.22 * lumps + 0.5 * broad, v / 0.85 + 0.15 * lumps, seed + 12, crack)
      line = cracked * smoothStep(0.012 + fp, 0, crack.f2 - crack.f1)
    }
    const nearLoss = smoothStep(limit - 0.055, limit, off)
    out.first = plaster
    out.second = stain
    out.share = Math.min(
      0.75,
      0.1 * damp * (1 + lumps) + 0.3 * Math.max(0, streak) + 0.16 * Math.max(0, -broad) + 0.6 * line,
    )
    out.tone = (1 + 0.07 * broad + 0.06 * lumps) * (1 - 0.2 * damp) * (1 - 0.4 * line) * (1 + 0.05 * nearLoss)
    out.relief = Math.max(
      -0.8,
      Math.min(0.6, ((lumps - ahead) * 0.0075) / step + 0.6 * trowel * smoothStep(0.05, 0.01, fp) + 0.22 * nearLoss),
    )
    out.hollow = 0.5 * line
  }
}
