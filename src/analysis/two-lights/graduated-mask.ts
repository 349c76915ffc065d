// A mask that passes evenly from sun to shade between two places: for light that falls off across a scene without an edge.
import type { Mask } from './shade-mask.ts'
import { applyStrokes, type Stroke } from './strokes.ts'

export interface GraduatedMaskRequest {
  readonly width: number
  readonly height: number
  /** Places 0…1 of the upright frame up to which all is sun, and from which all is shade. */
  readonly sunEnds: readonly [x: number, y: number]
  readonly shadeBegins: readonly [x: number, y: number]
  readonly strokes: readonly Stroke[]
}

/** The mask, straight between the places and square to their line. Throws a RangeError where both are one place. */
export function graduatedMask({ width, height, sunEnds, shadeBegins, strokes }: GraduatedMaskRequest): Mask {
  const [fromX, fromY] = [sunEnds[0] * width, sunEnds[1] * height]
  const [dx, dy] = [shadeBegins[0] * width - fromX, shadeBegins[1] * height - fromY]
  const length = dx * dx + dy * dy
  if (!(length > 0)) throw new RangeError('A graduated mask needs two different places; move one of them.')
  const plane = new Float32Array(width * height)
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      plane[i] = Math.min(Math.max(((x + 0.5 - fromX) * dx + (y + 0.5 - fromY) * dy) / length, 0), 1)
    }
  }
  applyStrokes(plane, width, height, strokes)
  return { width, height, plane }
}
