// Runs a chain on the GPU over given pixels in 32-bit float and reads all of it back: the bench for comparing the engines.
import { DataTexture, FloatType, NearestFilter, RGBAFormat, WebGLRenderTarget } from 'three'

import { createCanvasContext } from '../../src/gpu/canvas-context.ts'
import { createChainPrograms } from '../../src/gpu/chain-program.ts'
import { createPass } from '../../src/gpu/pass.ts'
import { writePlacement, writeTextureSource } from '../../src/gpu/place-uniforms.ts'
import { viewStage } from '../../src/gpu/stages.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'

export interface FloatRun {
  /** Interleaved RGB of `rgba` (`width × height` pixels, the whole frame) after the chain. */
  run(description: PipelineDescription, rgba: Float32Array, width: number, height: number): Float32Array
  /** Programs compiled so far. */
  programCount(): number
  dispose(): void
}

export function createFloatRun(): FloatRun {
  const renderer = createCanvasContext(document.createElement('canvas'))
  if (!renderer.getContext().getExtension('EXT_color_buffer_float')) throw new Error('needs 32-bit float targets')
  const pass = createPass(renderer)
  const programs = createChainPrograms()
  return {
    run(description, rgba, width, height) {
      const texture = new DataTexture(new Float32Array(rgba), width, height, RGBAFormat, FloatType)
      texture.needsUpdate = true
      const target = new WebGLRenderTarget(width, height, {
        type: FloatType,
        depthBuffer: false,
        minFilter: NearestFilter,
      })
      const material = programs.material(viewStage, description)
      const placement = { left: 0, top: 0, zoom: 1, frameWidth: width, frameHeight: height, screenHeight: null }
      writePlacement(material.uniforms, placement)
      writeTextureSource(material.uniforms, { texture, x: 0, y: 0, scale: 1, level: 0, nearest: true })
      pass.draw(material, target, { width, height })
      const read = new Float32Array(width * height * 4)
      renderer.readRenderTargetPixels(target, 0, 0, width, height, read)
      texture.dispose()
      target.dispose()
      const rgb = new Float32Array(width * height * 3)
      for (let from = 0, to = 0; from < read.length; from += 4, to += 3) rgb.set(read.subarray(from, from + 3), to)
      return rgb
    },
    programCount: () => renderer.info.programs?.length ?? 0,
    dispose() {
      programs.dispose()
      renderer.dispose()
    },
  }
}
