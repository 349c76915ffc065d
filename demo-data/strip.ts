// A strip is a run of upright rows taken all the way from scene to codes. Strips do not depend on each other, so several
// workers can share one frame, and a whole frame never has to exist as floating-point colour.
import { frameSize } from './frame-size.ts'
import { createPalette } from './light/triplets.ts'
import { createBand } from './paint/canvas.ts'
import type { Size } from './paint/scene.ts'
import { findFrame } from './roll.ts'
import { bodies } from './sensor/body.ts'
import { exposeBand } from './sensor/expose.ts'
import { apronRows, throughLens } from './sensor/lens.ts'

export interface FrameOrder {
  readonly frameId: string
  readonly megapixels: number
  /** Also return what every pixel shows. */
  readonly truth?: boolean
}

export interface Strip {
  readonly y0: number
  readonly y1: number
  /** One code per pixel, upright. */
  readonly codes: Uint16Array
  /** Material id and share of direct sun 0…255 per pixel, upright; empty unless asked for. */
  readonly material: Uint8Array
  readonly sun: Uint8Array
}

const stripRows = 128

/** Rows of every strip of a frame, from top to bottom. */
export function stripRanges(size: Size): { y0: number; y1: number }[] {
  const count = Math.ceil(size.height / stripRows)
  return Array.from({ length: count }, (_, i) => ({
    y0: i * stripRows,
    y1: Math.min(size.height, (i + 1) * stripRows),
  }))
}

/** Prepares the scene (seconds) and returns the upright size and a function that makes any strip. */
export async function createStripMaker(
  order: FrameOrder,
): Promise<{ size: Size; make: (y0: number, y1: number) => Strip }> {
  const frame = findFrame(order.frameId)
  const scene = await frame.scene()
  const size = frameSize(order.megapixels, scene.aspect)
  const body = bodies[frame.sensor]
  const painter = scene.prepare(size, createPalette(frame.sensor, frame.filter, frame.lowSun), frame.seed)
  const make = (y0: number, y1: number): Strip => {
    const band = createBand(size.width, size.height, Math.max(0, y0 - apronRows), Math.min(size.height, y1 + apronRows))
    painter.paint(band)
    const seen = throughLens(band, y0, y1)
    const codes = exposeBand(seen, size, body, frame.exposure, frame.seed)
    const none = new Uint8Array()
    return { y0, y1, codes, material: order.truth ? seen.material : none, sun: order.truth ? seen.sun : none }
  }
  return { size, make }
}
