import { DataTexture, FloatType, LinearFilter, RGBAFormat, WebGLRenderTarget, UnsignedByteType } from 'three'
import { expect, it } from 'vitest'
import { createCanvasContext } from '../../src/gpu/canvas-context.ts'
import { createChainPrograms } from '../../src/gpu/chain-program.ts'
import { createPass, passMaterial } from '../../src/gpu/pass.ts'
import {
  placeUniforms,
  textureSourceUniforms,
  writePlacement,
  writeTextureSource,
} from '../../src/gpu/place-uniforms.ts'
import { viewStage } from '../../src/gpu/stages.ts'
import { operations, operationById } from '../../src/operations/index.ts'
import { describe } from '../../src/pipeline/describe.ts'
const facts = {
  meanCameraRgb: [0.31, 0.22, 0.17],
  referenceNeutral: [0.5, -0.37],
  noise: { fullScaleElectrons: 40000, readNoiseElectrons: 4 },
  cameraToXyz: null,
  filterNm: 720,
  aspect: 1.5,
} as never
const V: any = {
  neutral: { redStops: -0.5, blueStops: 0.37, holdBrightness: true, highlightGuard: true },
  channelMix: { rows: [0, 0, 1, 0, 1, 0, 1, 0, 0] },
  hueTurn: { angleDeg: 25 },
  exposureContrast: { exposureEv: 0.4, contrast: 0.15, pivotEv: 0, shoulder: 0.3 },
  outputTransform: { space: 'srgb' },
}
const chain = (ids: string[]) =>
  describe(
    ids.map((id) => ({ id, operation: id, version: 1, enabled: true, values: V[id] })),
    facts,
  )
it('cost', () => {
  const W = 800,
    H = 500,
    w = 1732,
    h = 1155
  const renderer = createCanvasContext(document.createElement('canvas'))
  renderer.setSize(W, H, false)
  const gl = renderer.getContext()
  gl.getExtension('EXT_color_buffer_float')
  const pass = createPass(renderer)
  const rgba = new Float32Array(w * h * 4)
  for (let y = 0, i = 0; y < h; y++)
    for (let x = 0; x < w; x++, i += 4) {
      const l = 0.05 + 0.6 * (0.5 + 0.5 * Math.sin(x / 97) * Math.cos(y / 71)) + 0.01 * Math.random()
      const c = 0.35 * Math.sin(x / 211 + y / 301)
      rgba[i] = l * (1.41 + c)
      rgba[i + 1] = l
      rgba[i + 2] = l * (0.77 - c * 0.6)
      rgba[i + 3] = Math.max(rgba[i], l)
    }
  const t = new DataTexture(rgba, w, h, RGBAFormat, FloatType)
  t.internalFormat = 'RGBA16F'
  t.minFilter = t.magFilter = LinearFilter
  t.needsUpdate = true
  const programs = createChainPrograms()
  const placement = { left: 12, top: 1, zoom: 775 / 6000, frameWidth: 6000, frameHeight: 4000, screenHeight: H }
  const src = { texture: t, x: 0, y: 0, scale: 6000 / w, level: 0, nearest: false }
  const px = new Uint8Array(4)
  const once = (draw: () => void) => {
    const a = performance.now()
    draw()
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, px)
    return performance.now() - a
  }
  const target = new WebGLRenderTarget(W, H, { type: UnsignedByteType, depthBuffer: false })
  const plain = passMaterial(
    [
      ...viewStage.before,
      'out vec4 colour; void main(){ colour = vec4(cameraAt(sensorAt(gl_FragCoord.xy)).rgb, 1.0); }',
    ],
    { ...placeUniforms(), ...textureSourceUniforms() },
  )
  const m = (mat: any) => {
    writePlacement(mat.uniforms, placement)
    writeTextureSource(mat.uniforms, src)
    pass.draw(mat, target, { width: W, height: H })
  }
  const all = ['neutral', 'channelMix', 'hueTurn', 'exposureContrast', 'outputTransform']
  const jobs: [string, () => void][] = [['copy', () => m(plain)]]
  for (const ids of [
    ['outputTransform'],
    ['neutral', 'outputTransform'],
    ['neutral', 'channelMix', 'outputTransform'],
    ['neutral', 'channelMix', 'exposureContrast', 'outputTransform'],
    all,
  ]) {
    const d = chain(ids)
    jobs.push([ids.join(' '), () => m(programs.material(viewStage, d))])
  }
  const best = jobs.map(() => 1e9)
  for (let k = 0; k < 25; k++)
    jobs.forEach(([, draw], i) => {
      best[i] = Math.min(best[i], once(draw))
    })
  console.log(jobs.map(([name], i) => `${best[i].toFixed(1)} ms ×${(best[i] / best[0]).toFixed(2)} ${name}`).join('\n'))
  expect(operations.length && operationById).toBeTruthy()
})
