// One place that stands for a colour: in the middle of its largest even patch, where a picker reads it best.
import { boxSums } from '../box-sums.ts'
import type { ColourCells } from './colour-cells.ts'
import type { Mode } from './modes.ts'

/** Radius of the patch in cells (our choice): about a fiftieth of the frame's width. */
const patchRadius = 4

/** x and y, 0…1. */
export function modePlace({ width, height, place, u, v }: ColourCells, mode: Mode): [x: number, y: number] {
  const inside = new Float32Array(width * height)
  for (const i of mode.members) inside[place[i]] = 1
  const around = boxSums(inside, width, height, patchRadius)
  const off = (i: number) => Math.hypot(u[i] - mode.u, v[i] - mode.v)
  const best = mode.members.reduce((best, i) => {
    const gain = around[place[i]] - around[place[best]]
    return gain > 0 || (gain === 0 && off(i) < off(best)) ? i : best
  })
  return [((place[best] % width) + 0.5) / width, (Math.floor(place[best] / width) + 0.5) / height]
}
