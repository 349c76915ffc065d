// What the graphics of this machine can do, found once per context. The picture and the export step down by it.

export interface Capabilities {
  /** The driver's own name, as far as the browser tells it. */
  readonly renderer: string
  /** WebGL is computed by the processor: everything works, slowly. */
  readonly softwareGl: boolean
  readonly largestTexture: number
  /** Tiles of the view are demosaiced once into 16-bit float textures; without, at every draw. */
  readonly tiles16F: boolean
  /** Exports are computed on the GPU in 32-bit float; without, on the processor. */
  readonly export32F: boolean
  /** One sentence on what is less good here, or null. */
  readonly limit: string | null
}

/** Names of renderers that compute on the processor; from memory. */
const softwareNames = /swiftshader|llvmpipe|softpipe|software|microsoft basic render/i

function canRenderTo(gl: WebGL2RenderingContext, internalFormat: GLenum): boolean {
  const texture = gl.createTexture()
  const framebuffer = gl.createFramebuffer()
  gl.bindTexture(gl.TEXTURE_2D, texture)
  gl.texStorage2D(gl.TEXTURE_2D, 1, internalFormat, 4, 4)
  gl.bindFramebuffer(gl.FRAMEBUFFER, framebuffer)
  gl.framebufferTexture2D(gl.FRAMEBUFFER, gl.COLOR_ATTACHMENT0, gl.TEXTURE_2D, texture, 0)
  const complete = gl.checkFramebufferStatus(gl.FRAMEBUFFER) === gl.FRAMEBUFFER_COMPLETE
  gl.bindFramebuffer(gl.FRAMEBUFFER, null)
  gl.bindTexture(gl.TEXTURE_2D, null)
  gl.deleteFramebuffer(framebuffer)
  gl.deleteTexture(texture)
  return complete
}

function limitSentence(softwareGl: boolean, tiles16F: boolean, export32F: boolean): string | null {
  if (!tiles16F) {
    return 'The graphics of this machine draw in 8 bits only: the picture is right but slower above fit, and exports are computed by the processor.'
  }
  if (!export32F) {
    return 'The graphics of this machine cannot compute in 32 bits: exports are computed by the processor, equal but slower.'
  }
  return softwareGl
    ? 'This machine draws without a graphics card: the picture is coarser while it moves and exact when it rests.'
    : null
}

/** Asks the context. `withhold` takes abilities away, to see how the rest gets along without them. */
export function detectCapabilities(
  gl: WebGL2RenderingContext,
  withhold: { readonly float32?: boolean; readonly float16?: boolean } = {},
): Capabilities {
  const names = gl.getExtension('WEBGL_debug_renderer_info')
  const renderer = String(gl.getParameter(names ? names.UNMASKED_RENDERER_WEBGL : gl.RENDERER))
  const hasFloat = gl.getExtension('EXT_color_buffer_float') !== null
  const hasHalf = hasFloat || gl.getExtension('EXT_color_buffer_half_float') !== null
  const softwareGl = softwareNames.test(renderer)
  const tiles16F = hasHalf && !withhold.float16 && canRenderTo(gl, gl.RGBA16F)
  const export32F = tiles16F && hasFloat && !withhold.float32 && canRenderTo(gl, gl.RGBA32F)
  return {
    renderer,
    softwareGl,
    largestTexture: gl.getParameter(gl.MAX_TEXTURE_SIZE) as number,
    tiles16F,
    export32F,
    limit: limitSentence(softwareGl, tiles16F, export32F),
  }
}
