// What a colour of the frame looks like, in numbers that a score and a sentence can be made of.
import type { ColourCells } from './colour-cells.ts'
import { type ColourRange } from './colour-range.ts'
import { quantileInPlace } from '../../math/order-statistics.ts'
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
  /** Distance to the neutral side of the line between foliage and sky, in its lengths. */
  readonly bulge: number
}

export function modeFeatures(cells: ColourCells, range: ColourRange, mode: Mode, bulge: number): ModeFeatures {
  const { u, v, members } = mode
  const n = members.length
  const levels = new Float32Array(n)
  let texture = 0
  for (let k = 0; k < n; k++) {
    levels[k] = cells.level[members[k]]
    texture += cells.texture[members[k]] / n
  }
  return {
    brightStops: quantileInPlace(levels, 0.9) - range.bright,
    area: n / cells.u.length,
    along: (u - v - range.low) / range.spread,
    texture,
    bulge,
  }
}
