// The uniforms of `shaders/place.glsl` and `shaders/source-texture.glsl`: where a target lies on the sensor and what it reads.
import type { Texture } from 'three'

import { setUniforms, type Uniforms } from './pass.ts'

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
