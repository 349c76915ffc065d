// Source for arrays without kernels of their own, 6×6 above all. With 32-bit float targets green and differences are worked
// out once per tile in a step before; without, at every tap.
import {
  DataTexture,
  FloatType,
  NearestFilter,
  RedFormat,
  RGBAFormat,
  RGFormat,
  type Texture,
  WebGLRenderTarget,
} from 'three'

import codesFloat from '../../shaders/codes-float.glsl?raw'
import anyArray from '../../shaders/demosaic-any.glsl?raw'
import mixedText from '../../shaders/mixed.glsl?raw'
import type { Cfa, MosaicData } from '../frame/frame.ts'
import { anyReach, difference, green } from '../sensor/demosaic-any.ts'
import { planeKernel, type Tap } from '../sensor/plane-kernels.ts'
import type { CodeSource } from './code-source.ts'
import { loadPhotosites, writeTile } from './code-tile.ts'
import { type Pass, setUniforms, type Uniforms } from './pass.ts'

function dataTexture(
  data: Float32Array<ArrayBuffer>,
  width: number,
  height: number,
  format: typeof RGBAFormat | typeof RedFormat,
) {
  const texture = new DataTexture(data, width, height, format, FloatType)
  texture.needsUpdate = true
  return texture
}

/** Kernels of green, red and blue for each place in the array, one row each. */
function kernelRows(cfa: Cfa): readonly (readonly Tap[])[] {
  const kinds = [[1, green] as const, [0, difference] as const, [2, difference] as const]
  return cfa.colours.flatMap((_, place) =>
    kinds.map(([colour, { reach, sigma }]) =>
      planeKernel(cfa, colour, place % cfa.columns, Math.floor(place / cfa.columns), reach, sigma),
    ),
  )
}

function tapsTexture(cfa: Cfa): Texture {
  const rows = kernelRows(cfa)
  const width = Math.max(...rows.map((row) => row.length))
  const data = new Float32Array(rows.length * width * 4)
  rows.forEach((row, y) =>
    row.forEach(({ x, y: down, weight }, i) => data.set([x, down, weight, row.length], (y * width + i) * 4)),
  )
  return dataTexture(data, width, rows.length, RGBAFormat)
}

/** `inTwoSteps` needs a context that renders to 32-bit float. */
export function anyArraySource(sensor: MosaicData, pass: Pass, inTwoSteps: boolean): CodeSource {
  const { cfa } = sensor
  const pattern = {
    taps: tapsTexture(cfa),
    arrayColours: dataTexture(Float32Array.from(cfa.colours), cfa.columns, cfa.rows, RedFormat),
  }
  const firstStep = pass.material([codesFloat, anyArray, mixedText])
  const mixed = new WebGLRenderTarget(1, 1, {
    format: RGFormat,
    type: FloatType,
    minFilter: NearestFilter,
    magFilter: NearestFilter,
    depthBuffer: false,
  })
  const text = inTwoSteps ? [codesFloat, '#define MIXED_FETCHED', anyArray] : [codesFloat, anyArray]
  return {
    key: inTwoSteps ? 'any array, two steps' : 'any array',
    text,
    steps: inTwoSteps ? [firstStep] : [],
    mixesChannels: true,
    load: (area, margin) => loadPhotosites(sensor, area, margin + anyReach),
    write(uniforms: Uniforms, tile, gains) {
      if (inTwoSteps) {
        const { width, height } = tile.texture.image
        writeTile(firstStep.uniforms, tile)
        setUniforms(firstStep.uniforms, { ...pattern, gains })
        mixed.setSize(width, height)
        pass.draw(firstStep, mixed, mixed)
      }
      writeTile(uniforms, tile)
      setUniforms(uniforms, { ...pattern, gains, mixed: mixed.texture })
    },
    dispose() {
      for (const texture of Object.values(pattern)) texture.dispose()
      mixed.dispose()
    },
  }
}
