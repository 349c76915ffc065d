// The full mosaic of one frame while its strips arrive in any order: turned as the camera was held, with the masked border
// that never saw light, and with the ground truth beside it where it was asked for.
import type { Mosaic } from './dng/dng-file.ts'
import type { Size } from './paint/scene.ts'
import type { RollFrame } from './roll.ts'
import { bodies } from './sensor/body.ts'
import { maskedCode } from './sensor/expose.ts'
import { sensorColumn, sensorRow, sensorSize } from './sensor/orientation.ts'
import type { Strip } from './strip.ts'

export interface Sheet extends Mosaic {
  /** Upright material ids and sun shares, one per pixel; empty without truth. */
  readonly material: Uint8Array
  readonly sun: Uint8Array
  place(strip: Strip): void
}

/** `size` is the upright size of the picture. */
export function createSheet(frame: RollFrame, size: Size, truth: boolean): Sheet {
  const { exposure } = frame
  const { orientation } = exposure
  const body = bodies[frame.sensor]
  const { top, left } = body.border
  const picture = sensorSize(size, orientation)
  const raw = { width: picture.width + left, height: picture.height + top }
  const codes = new Uint16Array(raw.width * raw.height)
  for (let y = 0; y < raw.height; y++) {
    const masked = y < top ? raw.width : left
    for (let x = 0; x < masked; x++)
      codes[y * raw.width + x] = maskedCode(body, exposure, x, y, (y & 1) * 2 + (x & 1), frame.seed)
  }
  const material = new Uint8Array(truth ? size.width * size.height : 0)
  const sun = new Uint8Array(material.length)
  const place = (strip: Strip) => {
    if (truth) {
      material.set(strip.material, strip.y0 * size.width)
      sun.set(strip.sun, strip.y0 * size.width)
    }
    for (let y = strip.y0, i = 0; y < strip.y1; y++) {
      for (let x = 0; x < size.width; x++, i++) {
        const sx = sensorColumn(size, orientation, x, y)
        const sy = sensorRow(size, orientation, x, y)
        codes[(sy + top) * raw.width + sx + left] = strip.codes[i]
      }
    }
  }
  return { codes, raw, picture, material, sun, place }
}
