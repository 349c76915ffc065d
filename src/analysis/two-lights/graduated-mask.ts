// A mask that passes evenly from sun to shade between two places: for light that falls off across a scene without an edge.
import { smoothstep } from '../../math/smoothstep.ts'
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

/** The mask, smooth between the places and square to their line; where both are one place, a step there. */
export function graduatedMask({ width, height, sunEnds, shadeBegins, strokes }: GraduatedMaskRequest): Mask {
  const [fromX, fromY] = [sunEnds[0] * width, sunEnds[1] * height]
  const [dx, dy] = [shadeBegins[0] * width - fromX, shadeBegins[1] * height - fromY]
  const length = Math.max(dx * dx + dy * dy, Number.EPSILON)
  const plane = new Float32Array(width * height)
  for (let y = 0, i = 0; y < height; y++) {
    for (let x = 0; x < width; x++, i++) {
      plane[i] = smoothstep(0, 1, ((x + 0.5 - fromX) * dx + (y + 0.5 - fromY) * dy) / length)
    }
  }
  applyStrokes(plane, width, height, strokes)
  return { width, height, plane }
}
