// The overview on the GPU: 16-bit float with levels of detail, converted from the CPU's 32-bit copy by the driver
// while it uploads, because converting here would hold up the interface.
import { DataTexture, FloatType, LinearFilter, LinearMipmapNearestFilter, RGBAFormat } from 'three'

import type { Overview } from '../frame/frame.ts'

/** `withLevels` needs a context that can render to 16-bit float. */
export function createOverviewTexture(overview: Overview, withLevels: boolean): DataTexture {
  const { rgba, width, height } = overview
  const texture = new DataTexture(rgba as Float32Array<ArrayBuffer>, width, height, RGBAFormat, FloatType)
  texture.internalFormat = 'RGBA16F'
  texture.magFilter = LinearFilter
  texture.minFilter = withLevels ? LinearMipmapNearestFilter : LinearFilter
  texture.generateMipmaps = withLevels
  texture.needsUpdate = true
  return texture
}

/** Level whose texels are not more than one and less than two to a target pixel; 0 when the texture is magnified. */
export function overviewLevel(zoom: number, scale: number): number {
  return Math.max(0, Math.floor(-Math.log2(zoom * scale)))
}
