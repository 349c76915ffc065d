// Which tiles a view shows, nearest to its centre first. All tiles hold the same number of texels; their level says how often
// the sensor's pixels were halved, so that a view from afar needs hardly more texels than it has pixels.
import type { PictureView } from './picture-request.ts'
import type { PatchSource } from './patch.ts'

/** Side of a tile in texels: small enough that little is made beyond the edges of the view (our choice). */
const tileTexels = 512
/** Halvings offered: an overview of two megapixels reaches beyond the third for all sensors up to 128 megapixels. */
const coarsest = 2

export interface TileSpot {
  readonly key: string
  /** Upper left corner and side in sensor pixels. */
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
function tileLevel(zoom: number): number {
  return Math.min(Math.max(Math.floor(-Math.log2(zoom)), 0), coarsest)
}

export function spotsInView(
  view: PictureView,
  sensor: { readonly width: number; readonly height: number },
): TileSpot[] {
  const level = tileLevel(view.zoom)
  const size = tileTexels << level
  const span = (start: number, length: number, whole: number) => {
    const from = Math.max(-start / view.zoom, 0)
    const to = Math.min((length - start) / view.zoom, whole)
    return { first: Math.floor(from / size), end: Math.ceil(to / size), middle: (from + to) / 2 }
  }
  const across = span(view.left, view.width, sensor.width)
  const down = span(view.top, view.height, sensor.height)
  const spots: (TileSpot & { readonly away: number })[] = []
  for (let j = down.first; j < down.end; j++) {
    for (let i = across.first; i < across.end; i++) {
      const [x, y] = [i * size, j * size]
      const away = Math.hypot(x + size / 2 - across.middle, y + size / 2 - down.middle)
      spots.push({ key: `${level}/${i}/${j}`, x, y, size, level, away })
    }
  }
  return spots.sort((a, b) => a.away - b.away)
}
