// Neutrals that need no place in the picture: what the frame as a whole averages to. They are choices of their own and the
// yardstick that suggestions from places have to beat.
import type { CellGrid } from '../../frame/cell-grid.ts'

export type AutomaticNeutral = 'plain mean' | 'grey world' | 'shades of grey'

/** Powers that channels are raised to, as products because there are many cells: shades of grey by 6 (Finlayson & Trezzi 2004). */
const powers = {
  'grey world': { power: 1, raise: (value: number) => value },
  'shades of grey': { power: 6, raise: (value: number) => value * value * value * (value * value * value) },
}

/** Means over valid cells of channels raised to a power, taken back by its root; null without a valid cell. */
function powerMeans(
  { rgb, valid }: CellGrid,
  { power, raise }: (typeof powers)[keyof typeof powers],
): [number, number, number] | null {
  const sums: [number, number, number] = [0, 0, 0]
  let cells = 0
  for (let i = 0; i < valid.length; i++) {
    if (!valid[i]) continue
    for (let c = 0; c < 3; c++) sums[c] += raise(Math.max(rgb[i * 3 + c], 0))
    cells++
  }
  return cells && Math.min(...sums) > 0 ? (sums.map((sum) => (sum / cells) ** (1 / power)) as typeof sums) : null
}

function meanOfLogs({ rgb, valid }: CellGrid): [number, number] | null {
  let [u, v, cells] = [0, 0, 0]
  for (let i = 0; i < valid.length; i++) {
    const [r, g, b] = [rgb[i * 3], rgb[i * 3 + 1], rgb[i * 3 + 2]]
    if (!valid[i] || Math.min(r, g, b) <= 0) continue
    u += Math.log2(r / g)
    v += Math.log2(b / g)
    cells++
  }
  return cells ? [u / cells, v / cells] : null
}

/**
 * (log2 R/G, log2 B/G) that the frame averages to: the mean of logs, of linear values (Buchsbaum 1980) or of their sixth
 * powers. Null where no cell is usable.
 */
export function automaticNeutral(grid: CellGrid, kind: AutomaticNeutral): [number, number] | null {
  if (kind === 'plain mean') return meanOfLogs(grid)
  const means = powerMeans(grid, powers[kind])
  return means && [Math.log2(means[0] / means[1]), Math.log2(means[2] / means[1])]
}
