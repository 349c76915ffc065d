// What a colour of the frame looks like, in numbers that a score and a sentence can be made of.
import type { ColourCells } from './colour-cells.ts'
import { type ColourRange, quantile } from './colour-range.ts'
import type { Mode } from './modes.ts'

export interface ModeFeatures {
  /** Brightness of its bright end in stops from the frame's bright end; 0 is as bright. */
  readonly brightStops: number
  /** Share of the usable cells, 0…1. */
  readonly area: number
  /** Place on the frame's own scale of log2 R/B: 0 its foliage end, 1 its sky end. */
  readonly along: number
  /** Mean local deviation of brightness in stops. */
  readonly texture: number
  /** Share of its neighbours that have the same colour, 0…1. */
  readonly coherence: number
  /** Mean height in the frame, 0 top. */
  readonly heightInFrame: number
}

export function modeFeatures(cells: ColourCells, range: ColourRange, { u, v, members }: Mode): ModeFeatures {
  const { width, height, place, at, level, texture } = cells
  const inside = new Uint8Array(cells.u.length)
  for (const i of members) inside[i] = 1
  let [textures, alike, heights] = [0, 0, 0]
  for (const i of members) {
    textures += texture[i]
    const here = place[i]
    const x = here % width
    heights += Math.floor(here / width) / height
    if (x > 0) alike += inside[at[here - 1]] ?? 0
    if (x + 1 < width) alike += inside[at[here + 1]] ?? 0
    alike += inside[at[here - width]] ?? 0
    alike += inside[at[here + width]] ?? 0
  }
  const n = members.length
  const levels = Float32Array.from(members, (i) => level[i]).sort()
  return {
    brightStops: quantile(levels, 0.9) - range.bright,
    area: n / cells.u.length,
    along: (u - v - range.low) / range.spread,
    texture: textures / n,
    coherence: alike / (4 * n),
    heightInFrame: heights / n,
  }
}
