// How one kind of place is written down: its controls, the numbers worked out from them for both engines, and its weight.
import type { FrameFacts } from '../../frame/frame.ts'
import type { Controls, Pixel, ValuesOf } from '../define.ts'

/** Numbers of a part for both engines; the shader takes them as two vectors of three. */
export type PartNumbers = readonly [number, number, number, number, number, number]

export interface MaskKind<C extends Controls = Controls> {
  /** With `Place` it names the function in `shaders/masks.glsl`. */
  readonly id: string
  readonly title: string
  readonly version: number
  readonly controls: C
  /** Whether it reads the material plane. */
  readonly readsMaterial: boolean
  derive(values: ValuesOf<C>, facts: FrameFacts): PartNumbers
  /**
   * 0 outside … 1 inside, for a pixel as it comes into the step; `material` is log2 R/B of `cameraRgb` against grey in stops.
   * Must not allocate.
   */
  weight(pixel: Pixel, material: number, k: PartNumbers): number
}

/** Furthest end of any range: beyond it 32-bit floats no longer part it from its soft edge (our choice). */
const furthest = 64

/** A typed end of a range, held where both engines can still tell its soft edge. */
export const heldEnd = (value: number) => Math.min(Math.max(value, -furthest), furthest)

/** Writes a kind down with its types inferred; adds nothing at run time. */
export function defineMaskKind<const C extends Controls>(kind: MaskKind<C>): MaskKind<C> {
  return kind
}
