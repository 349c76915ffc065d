// Which tiles a view shows, nearest to its centre first. A tile covers a fixed square of the sensor; its level says how many
// times its texels are halved, so that a view from afar needs no more texels than it has pixels.
import type { PictureView } from './picture-request.ts'
import type { PatchSource } from './patch.ts'

/** Side of a tile in sensor pixels: small enough that one tile is quick on slow graphics (our choice). */
const tileSize = 1024
/** Halvings offered: an overview of two megapixels reaches beyond the third for all sensors up to 128 megapixels. */
const coarsest = 2

export interface TileSpot {
  readonly key: string
  readonly x: number
  readonly y: number
  readonly size: number
  readonly level: number
}

export interface TileRequest {
  readonly spots: readonly TileSpot[]
  readonly gains: readonly [number, number, number]
  readonly nearest: boolean
  readonly standIn: PatchSource
}

/** Halvings at which a texel is at least half a device pixel and at most one. */
export function tileLevel(zoom: number): number {
  return Math.min(Math.max(Math.floor(-Math.log2(zoom)), 0), coarsest)
}

export function spotsInView(
  view: PictureView,
  sensor: { readonly width: number; readonly height: number },
): TileSpot[] {
  const level = tileLevel(view.zoom)
  const span = (start: number, length: number, size: number) => {
    const from = Math.max(-start / view.zoom, 0)
    const to = Math.min((length - start) / view.zoom, size)
    return { first: Math.floor(from / tileSize), end: Math.ceil(to / tileSize), middle: (from + to) / 2 }
  }
  const across = span(view.left, view.width, sensor.width)
  const down = span(view.top, view.height, sensor.height)
  const spots: (TileSpot & { readonly away: number })[] = []
  for (let j = down.first; j < down.end; j++) {
    for (let i = across.first; i < across.end; i++) {
      const [x, y] = [i * tileSize, j * tileSize]
      const away = Math.hypot(x + tileSize / 2 - across.middle, y + tileSize / 2 - down.middle)
      spots.push({ key: `${i}/${j}`, x, y, size: tileSize, level, away })
    }
  }
  return spots.sort((a, b) => a.away - b.away)
}
