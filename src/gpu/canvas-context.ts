// One WebGL2 context through three, set up so that shader output reaches the canvas unchanged: no depth, blending,
// antialiasing or colour conversion, because every shader here ends in finished numbers.
import { DataTexture, LinearSRGBColorSpace, WebGLRenderer } from 'three'

/** Copies one pixel: what three asks the context at the first copy it asks while the GPU has nothing to do yet. */
function askEarly(renderer: WebGLRenderer): void {
  const pixel = () => Object.assign(new DataTexture(new Uint8Array(4), 1, 1), { needsUpdate: true })
  const [from, to] = [pixel(), pixel()]
  renderer.copyTextureToTexture(from, to)
  to.dispose()
}

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
  askEarly(renderer)
  return renderer
}
