// Demosaicing of Bayer mosaics after Malvar, He & Cutler, "High-quality linear interpolation for demosaicing of
// Bayer-patterned color images" (ICASSP 2004): 5×5 kernels in eighths. Normalised photosites in, `cameraRgb` out.
// The kernels assume equal channels, so neutral gains act before them and are divided out again: only their ratios
// matter. All taps of one distance class share a colour, so they are summed first and gained once.
import type { Cfa } from '../frame/frame.ts'
import type { NormalisedTile } from './tile.ts'

/** Photosites the kernels reach beyond a pixel. */
export const bayerReach = 2

/** Fills RGB of `rgba` for a tile whose upper left pixel has the colour at (`left`, `top`) of the array. */
export function demosaicBayer(
  tile: NormalisedTile,
  cfa: Cfa,
  left: number,
  top: number,
  gains: readonly [number, number, number],
  rgba: Float32Array,
): void {
  const { values: v, width: w, height, apron } = tile
  const colourAt = (x: number, y: number) => cfa.colours[(y % 2) * 2 + (x % 2)]
  for (let y = 0, to = 0; y < height - 2 * apron; y++) {
    for (let x = 0; x < w - 2 * apron; x++, to += 4) {
      const i = (y + apron) * w + x + apron
      const own = colourAt(left + x, top + y)
      const beside = colourAt(left + x + 1, top + y)
      const diagonal = v[i - w - 1] + v[i - w + 1] + v[i + w - 1] + v[i + w + 1]
      const across = v[i - 1] + v[i + 1]
      const along = v[i - w] + v[i + w]
      const farAcross = v[i - 2] + v[i + 2]
      const farAlong = v[i - 2 * w] + v[i + 2 * w]
      rgba[to + own] = v[i]
      if (own === 1) {
        const below = 2 - beside
        const level = 5 * v[i] - diagonal
        rgba[to + beside] = across / 2 + ((level - farAcross + farAlong / 2) * (gains[1] / gains[beside])) / 8
        rgba[to + below] = along / 2 + ((level - farAlong + farAcross / 2) * (gains[1] / gains[below])) / 8
      } else {
        const far = farAcross + farAlong
        const opposite = 2 - own
        rgba[to + 1] = (across + along) / 4 + ((4 * v[i] - far) * (gains[own] / gains[1])) / 8
        rgba[to + opposite] = diagonal / 4 + ((6 * v[i] - 1.5 * far) * (gains[own] / gains[opposite])) / 8
      }
    }
  }
}
