// A drawing at half size, stretched over the canvas: what slow graphics show while something moves.
import { LinearFilter, type RawShaderMaterial, WebGLRenderTarget } from 'three'

import enlarge from '../../shaders/enlarge.glsl?raw'
import { type Pass, setUniforms, type Size } from './pass.ts'
import type { Placement } from './place-uniforms.ts'

export interface HalfSize {
  /** Needed by `show`. */
  readonly material: RawShaderMaterial
  /** Target for a canvas of this size. */
  target(canvas: Size): WebGLRenderTarget
  /** Stretches what was drawn over the canvas. */
  show(canvas: Size): void
  dispose(): void
}

export function createHalfSize(pass: Pass): HalfSize {
  const material = pass.material([enlarge])
  const filters = { minFilter: LinearFilter, magFilter: LinearFilter }
  const target = new WebGLRenderTarget(1, 1, { depthBuffer: false, ...filters })
  return {
    material,
    target({ width, height }) {
      target.setSize(Math.ceil(width / 2), Math.ceil(height / 2))
      return target
    },
    show(canvas) {
      setUniforms(material.uniforms, { drawing: target.texture, canvasHeight: canvas.height })
      pass.draw(material, null, canvas)
    },
    dispose() {
      target.dispose()
    },
  }
}

/** The same place at half size, on a target of this height. */
export function halved(placement: Placement, screenHeight: number): Placement {
  return {
    ...placement,
    left: placement.left / 2,
    top: placement.top / 2,
    zoom: placement.zoom / 2,
    screenHeight,
  }
}
