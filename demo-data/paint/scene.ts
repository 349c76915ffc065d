// What a scene is to the rest of the roll: prepare once for a frame size, then paint any band of rows in any order.
import type { Palette } from '../light/triplets.ts'
import type { Band } from './canvas.ts'

export interface Size {
  readonly width: number
  readonly height: number
}

interface Painter {
  /** Paints rows y0…y1 of the frame. The same rows come out alike whichever bands they are painted in. */
  paint(band: Band): void
}

export interface Scene {
  readonly id: string
  readonly title: string
  /** Width over height of the upright picture. */
  readonly aspect: number
  /** Fixes everything that does not depend on the band: clouds, trees, shadow maps, mirrored sky. */
  prepare(size: Size, palette: Palette, seed: number): Painter
}
