// A small finished picture of a frame for lists: the overview is reduced here, a few rows at a time, and what is left of it is
// developed by the reference engine in a worker. The interface thread is never held up.
import { transfer } from 'comlink'
import type { FrameFacts, Overview } from '../frame/frame.ts'
import type { Supplies } from '../operations/define.ts'
import type { Chain } from '../operations/step.ts'
import { lastingWorker } from './lasting-worker.ts'
import type { ThumbnailWorker } from './thumbnail-worker.ts'

/** Longer side in pixels: sharp at the size of a list on a dense screen, and cheap. */
const longSidePx = 240
/** Overview pixels averaged along each axis: enough against moiré, few enough to be quick. */
const taps = 3
/** Rows reduced before others get their turn: some 2 ms of work. */
const rowsPerTurn = 16

/** A frame reduced to few pixels, and all that its chain reads. */
export interface ThumbnailOrder {
  readonly width: number
  readonly height: number
  /** `cameraRgb` and largest level, four numbers each. */
  readonly rgba: Float32Array
  readonly chain: Chain
  readonly facts: FrameFacts
  readonly supplies: Supplies
}

/** The overview at about `longSide` pixels: evenly spread taps in each of its areas, alpha the largest of them. */
async function reduce(
  overview: Overview,
  longSide: number,
): Promise<Pick<ThumbnailOrder, 'width' | 'height' | 'rgba'>> {
  const factor = Math.max(1, Math.floor(Math.max(overview.width, overview.height) / longSide))
  const width = Math.floor(overview.width / factor)
  const height = Math.floor(overview.height / factor)
  const step = Math.min(taps, factor)
  const offsets = Array.from({ length: step }, (_, tap) => Math.floor(((tap + 0.5) * factor) / step))
  const { rgba: source } = overview
  const rgba = new Float32Array(width * height * 4)

  function reducePixel(x: number, y: number, to: number): void {
    for (const down of offsets) {
      for (const across of offsets) {
        const from = ((y * factor + down) * overview.width + x * factor + across) * 4
        for (let channel = 0; channel < 3; channel++) rgba[to + channel] += source[from + channel] / step ** 2
        rgba[to + 3] = Math.max(rgba[to + 3], source[from + 3])
      }
    }
  }
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) reducePixel(x, y, (y * width + x) * 4)
    if (y % rowsPerTurn === rowsPerTurn - 1) await new Promise((resolve) => setTimeout(resolve))
  }
  return { width, height, rgba }
}

const inWorker = lastingWorker<ThumbnailWorker>(
  () => new Worker(new URL('./thumbnail-worker.ts', import.meta.url), { type: 'module' }),
  'The browser gave up on the small picture. Reload the page and try again.',
)

/** Object URL of a JPEG of the finished picture in sRGB; the caller revokes it. @throws Error with a sentence for people */
export async function thumbnailUrl(
  overview: Overview,
  order: Pick<ThumbnailOrder, 'chain' | 'facts' | 'supplies'>,
): Promise<string> {
  const reduced = await reduce(overview, longSidePx)
  const jpeg = await inWorker((remote) => remote(transfer({ ...reduced, ...order }, [reduced.rgba.buffer])))
  return URL.createObjectURL(jpeg)
}
