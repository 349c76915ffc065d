// Clay pantiles: waves across the slope, rows overlapping down it, each tile its own tone, lichen and moss in the troughs.
import type { Palette } from '../light/triplets.ts'
import { hash, hashUnit } from './hash.ts'
import { fbm2 } from './noise.ts'
import { smoothStep, type SunSlope, type Texture } from './surface.ts'

/** Width of a tile and exposed length of a row in metres. */
const tileM = 0.21
const rowM = 0.31

export function createRoofTiles(palette: Palette, seed: number, sun: SunSlope): Texture {
  const clay = palette.of('brick')
  const dark = palette.of('brickDark')
  const lichen = palette.of('lichen')
  return (u, v, fp, out) => {
    const row = Math.floor(v / rowM)
    const slip = 0.02 * (hashUnit(row, Math.floor(u / tileM), seed, 1) - 0.5)
    const dv = v + slip - row * rowM
    const column = Math.floor(u / tileM)
    const phase = (u / tileM - column) * 2 * Math.PI
    const h = hash(row, column, seed)
    const fine = fbm2(u / 0.04, v / 0.04, 5, seed + 2, fp / 0.04)
    const broad = fbm2(u / 0.9, v / 0.9, 4, seed + 3, fp / 0.9)
    const lip = smoothStep(0.03, 0.004, dv)
    const trough = 0.5 - 0.5 * Math.sin(phase)
    out.first = smoothStep(0.1, 0.4, broad + 0.6 * fine) > 0.5 ? lichen : clay
    out.second = dark
    out.share = 0.2 + 0.6 * ((h & 255) / 255)
    out.tone = (0.8 + 0.5 * (((h >>> 8) & 255) / 255)) * (1 + 0.2 * fine + 0.15 * broad) * (1 - 0.3 * trough)
    const seen = smoothStep(0.12, 0.03, fp)
    out.relief = Math.max(-0.9, -1.1 * Math.cos(phase) * sun.u * seen - 0.8 * lip * seen + 0.2 * fine)
    out.hollow = 0.5 * trough * seen + 0.4 * lip * seen
  }
}
