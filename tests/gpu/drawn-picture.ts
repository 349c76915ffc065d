// A picture renderer on a canvas of its own whose drawings can be read, in rows from top to bottom.
import { createPictureRenderer, type PictureOptions, type PictureRenderer } from '../../src/gpu/picture-renderer.ts'

export interface DrawnPicture {
  readonly renderer: PictureRenderer
  readonly canvas: HTMLCanvasElement
  /** RGBA codes of the last drawing. */
  pixels(): Uint8Array
  /** Drawings that reached the canvas so far. */
  count(): number
}

export const surround = 0.2

export function createDrawnPicture(options: Partial<PictureOptions> = {}): DrawnPicture {
  const canvas = document.createElement('canvas')
  let last = new Uint8Array()
  let drawings = 0
  const renderer = createPictureRenderer(canvas, {
    surround,
    ...options,
    onDrawn() {
      drawings++
      const gl = canvas.getContext('webgl2')!
      const { width, height } = canvas
      const upward = new Uint8Array(width * height * 4)
      gl.bindFramebuffer(gl.FRAMEBUFFER, null)
      gl.readPixels(0, 0, width, height, gl.RGBA, gl.UNSIGNED_BYTE, upward)
      last = new Uint8Array(upward.length)
      for (let row = 0; row < height; row++) {
        last.set(upward.subarray(row * width * 4, (row + 1) * width * 4), (height - 1 - row) * width * 4)
      }
    },
  })
  return { renderer, canvas, pixels: () => last, count: () => drawings }
}
