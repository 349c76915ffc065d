// Decoded frames kept in memory, the least recently used dropped first, so that a long roll never exhausts the machine. The frame
// on the bench stays whatever comes.
import type { Frame } from '../frame/frame.ts'

/** Bytes of decoded frames kept at most: about eight frames of 24 megapixels (our choice). */
const budgetBytes = 700 * 2 ** 20

/** Memory of a frame's pixels in bytes. */
function frameBytes({ sensor, overview, cells }: Frame): number {
  const arrays = [sensor.codes, overview.rgba, cells.rgb, cells.unsmoothed]
  return arrays.reduce((sum, { byteLength }) => sum + byteLength, 0)
}

export interface FrameCache {
  get(id: string): Frame | undefined
  put(id: string, frame: Frame): void
}

/** `shownId` gives the frame on the bench. */
export function createFrameCache(shownId: () => string | null, limitBytes = budgetBytes): FrameCache {
  const frames = new Map<string, Frame>()
  return {
    get(id) {
      const frame = frames.get(id)
      if (frame) {
        frames.delete(id)
        frames.set(id, frame)
      }
      return frame
    },
    put(id, frame) {
      frames.delete(id)
      frames.set(id, frame)
      let total = [...frames.values()].reduce((sum, kept) => sum + frameBytes(kept), 0)
      for (const [oldId, old] of frames) {
        if (total <= limitBytes) break
        if (oldId === id || oldId === shownId()) continue
        frames.delete(oldId)
        total -= frameBytes(old)
      }
    },
  }
}
