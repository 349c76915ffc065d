// Pixel sizes of a frame from its megapixels: both sides multiples of four, so that whole CFA cells fit in every orientation.
import type { Size } from './paint/scene.ts'

/** Width and height in pixels for `megapixels` million pixels and `aspect` = width ÷ height. */
export function frameSize(megapixels: number, aspect: number): Size {
  if (!(megapixels >= 0.05 && megapixels <= 64))
    throw new Error(`A demo frame can have 0.05 to 64 megapixels; ${megapixels} was asked for.`)
  const height = Math.sqrt((megapixels * 1e6) / aspect)
  const even = (v: number) => Math.max(4, Math.round(v / 4) * 4)
  return { width: even(height * aspect), height: even(height) }
}
