// The uniforms of `shaders/place.glsl` and `shaders/source-texture.glsl`: where a target lies on the sensor and what it reads.
import type { RawShaderMaterial, Texture } from 'three'

type Uniforms = RawShaderMaterial['uniforms']

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

export const placeUniforms = (): Uniforms => ({
  corner: { value: [0, 0] },
  zoom: { value: 1 },
  rows: { value: [0, 1] },
  frameSize: { value: [1, 1] },
})

export const textureSourceUniforms = (): Uniforms => ({
  source: { value: null },
  sourceOrigin: { value: [0, 0] },
  sourceScale: { value: 1 },
  sourceLevel: { value: 0 },
  sourceNearest: { value: false },
})

export function writePlacement(uniforms: Uniforms, placement: Placement): void {
  uniforms.corner.value = [placement.left, placement.top]
  uniforms.zoom.value = placement.zoom
  uniforms.rows.value = placement.screenHeight === null ? [0, 1] : [placement.screenHeight, -1]
  uniforms.frameSize.value = [placement.frameWidth, placement.frameHeight]
}

export function writeTextureSource(uniforms: Uniforms, source: TextureSource): void {
  uniforms.source.value = source.texture
  uniforms.sourceOrigin.value = [source.x, source.y]
  uniforms.sourceScale.value = source.scale
  uniforms.sourceLevel.value = source.level
  uniforms.sourceNearest.value = source.nearest
}
