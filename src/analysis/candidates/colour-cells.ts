// The usable cells of a grid as points of colour: (u, v) = (log2 R/G, log2 B/G), with level, texture and noise beside them.
// Ratios in stops make light a shift, so that one material in one light is one small cloud of points.
import { type CellGrid, logRatioNoise } from '../../frame/cell-grid.ts'
import type { NoiseModel } from '../../frame/frame.ts'
import { medianInPlace } from '../../math/order-statistics.ts'
import { localTexture } from './local-texture.ts'

export interface ColourCells {
  readonly width: number
  readonly height: number
  /** Index of each usable cell in the grid, and the usable cell at each place of the grid or −1. */
  readonly place: Int32Array
  readonly at: Int32Array
  readonly u: Float32Array
  readonly v: Float32Array
  /** log2 of the largest channel. */
  readonly level: Float32Array
  /** Deviation of log2 G over the neighbourhood beyond noise, in stops. */
  readonly texture: Float32Array
  /** 1 where the colour does not change across the neighbourhood: one material, not an edge between two. */
  readonly pure: Uint8Array
  /** Typical noise of u − v in stops. */
  readonly noiseStops: number
}

/** Change of u − v across a neighbourhood, in stops, that shows an edge; and the share of pure cells a frame needs for them to be told apart (tuned by simulation). */
const edgeStops = 0.09
const leastPureShare = 0.02

/** Whether the colour at a place is the same as around it: differences across it in x and in y are small. */
function findPure(grid: CellGrid, at: Int32Array, p: (cell: number) => number, count: number): Uint8Array {
  const { width, height, radius } = grid
  const reach = radius + 1
  const pure = new Uint8Array(count)
  let found = 0
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      const cell = at[i]
      if (cell < 0) continue
      const left = at[x >= reach ? i - reach : i]
      const right = at[x + reach < width ? i + reach : i]
      const above = at[y >= reach ? i - reach * width : i]
      const under = at[y + reach < height ? i + reach * width : i]
      if (left < 0 || right < 0 || above < 0 || under < 0) continue
      if (Math.abs(p(right) - p(left)) + Math.abs(p(under) - p(above)) >= edgeStops) continue
      pure[cell] = 1
      found++
    }
  }
  return found < leastPureShare * count ? pure.fill(1) : pure
}

/** The usable cells of a grid; those with a channel at or below 0 are left out. */
export function readColourCells(grid: CellGrid, noise: NoiseModel): ColourCells {
  const { width, height, rgb, valid, radius, photosites } = grid
  const at = new Int32Array(width * height).fill(-1)
  let count = 0
  for (let i = 0; i < at.length; i++) {
    if (valid[i] && Math.min(rgb[i * 3], rgb[i * 3 + 1], rgb[i * 3 + 2]) > 0) at[i] = count++
  }
  const cells = {
    place: new Int32Array(count),
    u: new Float32Array(count),
    v: new Float32Array(count),
    level: new Float32Array(count),
    texture: new Float32Array(count),
  }
  const textures = localTexture(grid, noise)
  const noises = new Float32Array(count)
  const averaged = photosites * (2 * radius + 1) ** 2
  for (let i = 0; i < at.length; i++) {
    const cell = at[i]
    if (cell < 0) continue
    const [r, g, b] = [rgb[i * 3], rgb[i * 3 + 1], rgb[i * 3 + 2]]
    cells.place[cell] = i
    cells.u[cell] = Math.log2(r / g)
    cells.v[cell] = Math.log2(b / g)
    cells.level[cell] = Math.log2(Math.max(r, g, b))
    cells.texture[cell] = textures[i]
    noises[cell] = logRatioNoise(r, b, noise, averaged)
  }
  const pure = findPure(grid, at, (cell) => cells.u[cell] - cells.v[cell], count)
  return { width, height, at, ...cells, pure, noiseStops: count ? medianInPlace(noises) : 0 }
}
