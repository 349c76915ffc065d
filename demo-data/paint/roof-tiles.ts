// Clay pantiles: waves across the slope, rows overlapping down it, each tile its own tone, lichen and moss in the troughs.
import type { Palette } from '../light/triplets.ts'
import { hash, hashUnit } from './hash.ts'
import { fbm2 } from './noise.ts'
import { smoothStep, type SunSlope, type Texture } from './surface.ts'

/** Width of a tile and exposed length of a row in metres. */
const tileM = 0.21
const rowM = 0.31
/** Share of a tile's width that is roll; the rest is trough. */
const rollShare = 0.38

export function createRoofTiles(palette: Palette, seed: number, sun: SunSlope): Texture {
  const clay = palette.of('brick')
  const dark = palette.of('brickDark')
  const lichen = palette.of('lichen')
  return (u, v, fp, out) => {
    const column = Math.floor(u / tileM)
    const p = u / tileM - column
    const rolled = p < rollShare
    const wave = rolled
      ? Math.sin((p / rollShare) * Math.PI)
      : -0.7 * Math.sin(((p - rollShare) / (1 - rollShare)) * Math.PI)
    const slope = rolled
      ? -Math.cos((p / rollShare) * Math.PI)
      : 0.55 * Math.cos(((p - rollShare) / (1 - rollShare)) * Math.PI)
    const down = v + 0.022 * wave + 0.03 * (hashUnit(column, Math.floor(v / rowM), seed, 1) - 0.5)
    const row = Math.floor(down / rowM)
    const dv = down - row * rowM
    const h = hash(row, column, seed)
    const fine = fbm2(u / 0.04, v / 0.04, 6, seed + 2, fp / 0.04)
    const broad = fbm2(u / 0.9, v / 0.9, 4, seed + 3, fp / 0.9)
    const seen = smoothStep(0.12, 0.03, fp)
    const lip = smoothStep(0.05, 0.02, rowM - dv) * seen
    const end = smoothStep(0.012, 0.004, dv) * seen
    const seam = smoothStep(0.06, 0.015, p) * seen
    const crust = smoothStep(0.3, 0.55, 0.5 * broad + 0.8 * fine)
    out.first = crust > 0.5 ? lichen : clay
    out.second = dark
    out.share = 0.2 + 0.6 * ((h & 255) / 255)
    out.tone = (0.75 + 0.5 * (((h >>> 8) & 255) / 255)) * (1 + 0.25 * fine + 0.15 * broad) * (crust > 0.5 ? 0.8 : 1)
    out.relief = Math.max(
      -0.95,
      Math.min(0.7, 1.5 * slope * sun.u * seen - 0.7 * lip - 0.6 * seam + 0.35 * end + 0.25 * fine),
    )
    out.hollow = Math.min(0.8, 0.3 * (rolled ? 0 : -wave) * seen + 0.5 * lip + 0.5 * seam)
  }
}
