// From a frame's name to the bytes of its raw file. Strips are made here and, where helpers are given, by them as well:
// strip i belongs to worker i modulo their number, which shares the work evenly without any talk between them.
import { writeDng } from './dng/dng-file.ts'
import { renderPreview } from './dng/preview-jpeg.ts'
import { frameSize } from './frame-size.ts'
import type { Size } from './paint/scene.ts'
import { findFrame } from './roll.ts'
import { bodies } from './sensor/body.ts'
import { createSheet } from './sheet.ts'
import { createStripMaker, type FrameOrder, type Strip, stripRanges } from './strip.ts'

export interface MadeFrame {
  readonly fileName: string
  readonly bytes: Uint8Array<ArrayBuffer>
  /** Upright size of the painted picture; the file's default crop leaves out 4 pixels at each edge. */
  readonly size: Size
  /** Per upright pixel: material id and share of direct sun 0…255; empty unless ordered. */
  readonly material: Uint8Array
  readonly sun: Uint8Array
}

/** Somebody else who makes every strip of `order` whose index modulo `of` is `part`, handing over each as it is done. */
export type StripHelper = (
  order: FrameOrder,
  part: number,
  of: number,
  onStrip: (strip: Strip) => void,
) => Promise<void>

/** Makes one share of a frame's strips, letting other messages through between them. */
export async function makeShare(
  order: FrameOrder,
  part: number,
  of: number,
  onStrip: (strip: Strip) => void,
): Promise<void> {
  const { size, make } = await createStripMaker(order)
  for (const { y0, y1 } of stripRanges(size).filter((_, i) => i % of === part)) {
    onStrip(make(y0, y1))
    await new Promise((resolve) => setTimeout(resolve))
  }
}

/**
 * Makes one frame. `onProgress` receives 0…1. Throws an `Error` with a sentence when the frame's name or size is unknown.
 */
export async function makeFrame(
  order: FrameOrder,
  onProgress: (done: number) => void = () => {},
  helpers: readonly StripHelper[] = [],
): Promise<MadeFrame> {
  const frame = findFrame(order.frameId)
  const size = frameSize(order.megapixels, (await frame.scene()).aspect)
  const sheet = createSheet(frame, size, order.truth === true)
  let rowsDone = 0
  const onStrip = (strip: Strip) => {
    sheet.place(strip)
    rowsDone += strip.y1 - strip.y0
    onProgress((0.97 * rowsDone) / size.height)
  }
  const shares = [makeShare, ...helpers].map((share, i, all) => share(order, i, all.length, onStrip))
  await Promise.all(shares)
  const body = bodies[frame.sensor]
  const preview = await renderPreview(sheet, body, frame.exposure)
  const shot = { ...frame.shot, description: `${frame.title} (simulated)` }
  const bytes = writeDng(sheet, body, frame.exposure, shot, preview)
  onProgress(1)
  return { fileName: `${frame.id}.dng`, bytes, size, material: sheet.material, sun: sheet.sun }
}
