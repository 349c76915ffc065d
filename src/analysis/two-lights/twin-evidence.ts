// Whether a cell has a twin in the other light. Shade moves every material by the same step in colour and level, so a frame
// that holds a material in both lights shows its colours twice; what has a brighter twin lies in shade.
import type { LightPlane } from './light-plane.ts'

/** Bins in stops of colour and of level, and what an empty bin counts (tuned by simulation). */
const colourBin = 0.08
const levelBin = 0.25
const emptyShare = 3e-4
/** Bins on each side: 30 stops of level and 10 of colour. */
const columns = 128
const rows = 128
/** Radius of the smoothing of the density in bins. */
const reach = 2

/** Log2 of how much more likely each cell is in shade than in sun; 0 where nothing speaks for either or the cell is dark. */
export function twinEvidence(
  { log2Red }: LightPlane,
  along: Float32Array,
  distance: number,
  levelStep: number,
): Float32Array {
  const density = new Float32Array(columns * rows)
  const column = (colour: number) => Math.floor(colour / colourBin) + columns / 2
  const row = (level: number) => Math.floor(level / levelBin) + rows / 2 + 24
  const inside = (x: number, y: number) => x >= reach && y >= reach && x < columns - reach && y < rows - reach
  let counted = 0
  for (let i = 0; i < along.length; i++) {
    const [x, y] = [column(along[i]), row(log2Red[i])]
    if (!inside(x, y)) continue
    counted++
    for (let dy = -reach; dy <= reach; dy++)
      for (let dx = -reach; dx <= reach; dx++) density[(y + dy) * columns + x + dx]++
  }
  const share = 1 / (Math.max(counted, 1) * (2 * reach + 1) ** 2)
  const at = (x: number, y: number) => (inside(x, y) ? density[y * columns + x] * share : 0)
  return along.map((colour, i) => {
    const level = log2Red[i]
    if (!Number.isFinite(colour) || !Number.isFinite(level)) return 0
    const brighter = at(column(colour - distance), row(level - levelStep))
    const darker = at(column(colour + distance), row(level + levelStep))
    return Math.log2((brighter + emptyShare) / (darker + emptyShare))
  })
}
