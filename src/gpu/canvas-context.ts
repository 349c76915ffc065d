// One WebGL2 context through three, set up so that shader output reaches the canvas unchanged: no depth, blending,
// antialiasing or colour conversion, because every shader here ends in finished numbers.
import { LinearSRGBColorSpace, WebGLRenderer } from 'three'

/** Throws an Error with a sentence for the user when this browser offers no WebGL2. */
export function createCanvasContext(canvas: HTMLCanvasElement | OffscreenCanvas): WebGLRenderer {
  const gl = canvas.getContext('webgl2', {
    alpha: false,
    antialias: false,
    depth: false,
    stencil: false,
    powerPreference: 'high-performance',
  })
  if (!gl) {
    throw new Error(
      'The picture cannot be drawn: this browser offers no WebGL2. Turn hardware acceleration on in its settings, or use a current browser.',
    )
  }
  const renderer = new WebGLRenderer({ canvas, context: gl as WebGL2RenderingContext })
  renderer.outputColorSpace = LinearSRGBColorSpace
  renderer.autoClear = false
  renderer.sortObjects = false
  return renderer
}
