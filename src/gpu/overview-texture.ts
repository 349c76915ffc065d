// The overview on the GPU: 16-bit float with levels of detail, converted from the CPU's 32-bit copy by the driver while it
// uploads, because converting here would hold up the interface. For the same reason it goes up in bands, a few at a time.
import {
  DataTexture,
  FloatType,
  LinearFilter,
  LinearMipmapNearestFilter,
  RGBAFormat,
  Vector2,
  type WebGLRenderer,
} from 'three'

import type { Overview } from '../frame/frame.ts'

/** Numbers in a band: about 2 MB (our choice). */
const bandLength = 2 ** 19

export interface OverviewTexture {
  readonly texture: DataTexture
  /** Uploads for about `sliceMs`; true once all of it is there. */
  upload(sliceMs: number): boolean
}

function floatTexture(rgba: Float32Array, width: number, height: number): DataTexture {
  return new DataTexture(rgba as Float32Array<ArrayBuffer>, width, height, RGBAFormat, FloatType)
}

/** `withLevels` needs a context that can render to 16-bit float. */
export function createOverviewTexture(
  renderer: WebGLRenderer,
  { rgba, width, height }: Overview,
  withLevels: boolean,
): OverviewTexture {
  const texture = floatTexture(rgba, width, height)
  texture.internalFormat = 'RGBA16F'
  texture.magFilter = LinearFilter
  texture.minFilter = withLevels ? LinearMipmapNearestFilter : LinearFilter
  texture.generateMipmaps = withLevels
  texture.source.dataReady = false
  texture.needsUpdate = true
  const rowsPerBand = Math.ceil(bandLength / (width * 4))
  let top = 0

  function uploadBand(): void {
    const rows = Math.min(rowsPerBand, height - top)
    const band = floatTexture(rgba.subarray(top * width * 4, (top + rows) * width * 4), width, rows)
    // Levels are made whenever a copy ends, so only the last copy may ask for them.
    if (top > 0) texture.generateMipmaps = withLevels && top + rows === height
    renderer.copyTextureToTexture(band, texture, null, new Vector2(0, top))
    top += rows
  }

  return {
    texture,
    upload(sliceMs) {
      const startedAt = performance.now()
      while (top < height && performance.now() - startedAt < sliceMs) uploadBand()
      return top === height
    },
  }
}

/** Level whose texels are not more than one and less than two to a target pixel; 0 when the texture is magnified. */
export function overviewLevel(zoom: number, scale: number): number {
  return Math.max(0, Math.floor(-Math.log2(zoom * scale)))
}
