// The uniforms of `shaders/place.glsl`, `shaders/source-texture.glsl` and `shaders/view.glsl`: where a target lies on the sensor,
// what it reads, and what is marked on it.
import type { Texture } from 'three'

import { setUniforms, type Uniforms } from './pass.ts'
import type { ClippingShown } from './picture-request.ts'

/** Where the frame lies on a target; all in target pixels, rows counted downward from the upper edge. */
export interface Placement {
  readonly left: number
  readonly top: number
  /** Target pixels per sensor pixel. */
  readonly zoom: number
  readonly frameWidth: number
  readonly frameHeight: number
  /** Height of a target whose first row in memory is its lowest, as on a screen; null where it is its highest. */
  readonly screenHeight: number | null
}

/** What a texture with `cameraRgb` and peak covers. */
export interface TextureSource {
  readonly texture: Texture
  /** Corner of the texture on the sensor. */
  readonly x: number
  readonly y: number
  /** Sensor pixels per texel. */
  readonly scale: number
  /** Level of detail to read. */
  readonly level: number
  readonly nearest: boolean
}

const clippingCodes: Record<ClippingShown, number> = { none: 0, sensor: 1, output: 2 }

export function writeClipping(uniforms: Uniforms, clipping: ClippingShown): void {
  setUniforms(uniforms, { clipping: clippingCodes[clipping] })
}

export function writePlacement(uniforms: Uniforms, placement: Placement): void {
  setUniforms(uniforms, {
    corner: [placement.left, placement.top],
    zoom: placement.zoom,
    rows: placement.screenHeight === null ? [0, 1] : [placement.screenHeight, -1],
    frameSize: [placement.frameWidth, placement.frameHeight],
  })
}

export function writeTextureSource(uniforms: Uniforms, source: TextureSource): void {
  setUniforms(uniforms, {
    source: source.texture,
    sourceOrigin: [source.x, source.y],
    sourceScale: source.scale,
    sourceLevel: source.level,
    sourceNearest: source.nearest,
  })
}
