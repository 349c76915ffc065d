// Full resolution on the GPU against the reference demosaicing: every kind of sensor, tile seams and frame borders included.
import { FloatType, WebGLRenderTarget } from 'three'
import { expect, it } from 'vitest'

import place from '../../shaders/place.glsl?raw'
import tileText from '../../shaders/tile.glsl?raw'
import type { Cfa, SensorData } from '../../src/frame/frame.ts'
import { createCanvasContext } from '../../src/gpu/canvas-context.ts'
import { codeSource } from '../../src/gpu/code-source.ts'
import { createPass, passMaterial, setUniforms } from '../../src/gpu/pass.ts'
import { writePlacement } from '../../src/gpu/place-uniforms.ts'
import { demosaicTile } from '../../src/sensor/demosaic-tile.ts'
import { rggb, sampleLinear, sampleMosaic, sixBySix } from './sample-frame.ts'

const gains = [0.71, 1, 1.9] as const
const [width, height] = [90, 64]

const renderer = createCanvasContext(document.createElement('canvas'))
renderer.getContext().getExtension('EXT_color_buffer_float')
const pass = createPass(renderer)

/** The frame demosaiced in 32-bit float, tile by tile of the given side. */
function demosaicOnGpu(sensor: SensorData, side: number, inTwoSteps = true): Float32Array {
  const source = codeSource(sensor, pass, inTwoSteps)
  const material = passMaterial([place, ...source.text, tileText])
  const rgba = new Float32Array(sensor.width * sensor.height * 4)
  for (let y = 0; y < sensor.height; y += side) {
    for (let x = 0; x < sensor.width; x += side) {
      const area = {
        x,
        y,
        width: Math.min(side, sensor.width - x),
        height: Math.min(side, sensor.height - y),
      }
      const target = new WebGLRenderTarget(area.width, area.height, { type: FloatType, depthBuffer: false })
      source.write(material.uniforms, source.load(area, 0), gains)
      const frameSize = { frameWidth: sensor.width, frameHeight: sensor.height }
      writePlacement(material.uniforms, { left: -x, top: -y, zoom: 1, ...frameSize, screenHeight: null })
      setUniforms(material.uniforms, { level: 0 })
      pass.draw(material, target, target)
      const read = new Float32Array(area.width * area.height * 4)
      renderer.readRenderTargetPixels(target, 0, 0, area.width, area.height, read)
      for (let row = 0; row < area.height; row++) {
        const from = row * area.width * 4
        rgba.set(read.subarray(from, from + area.width * 4), ((y + row) * sensor.width + x) * 4)
      }
    }
  }
  return rgba
}

const turned = (colours: Cfa['colours']): Cfa => ({ ...rggb, colours })
const oddBlack = { columns: 4, rows: 1, codes: [500, 510, 505, 520] }

const sensors: readonly (readonly [string, SensorData])[] = [
  ['red first', sampleMosaic(width, height)],
  ['blue first', sampleMosaic(width, height, turned([2, 1, 1, 0]))],
  ['green first, red beside', sampleMosaic(width, height, turned([1, 0, 2, 1]))],
  ['green first, blue beside', sampleMosaic(width, height, turned([1, 2, 0, 1]))],
  ['levels in a pattern of four', { ...sampleMosaic(width, height), black: oddBlack }],
  ['one channel', sampleMosaic(width, height, { columns: 1, rows: 1, colours: [1] })],
  ['6×6', sampleMosaic(width, height, sixBySix)],
  ['three channels', sampleLinear(width, height)],
]

it.each(sensors)('%s agrees with the reference within 5e-6, in one tile and in many', (_name, sensor) => {
  const cpu = demosaicTile(sensor, { x: 0, y: 0, width, height }, gains)
  for (const side of [128, 30]) {
    const gpu = demosaicOnGpu(sensor, side)
    const at = gpu.reduce(
      (worst, value, i) => (Math.abs(value - cpu[i]) > Math.abs(gpu[worst] - cpu[worst]) ? i : worst),
      0,
    )
    const pixel = Math.floor(at / 4)
    const text = `at ${pixel % width}, ${Math.floor(pixel / width)} channel ${at % 4}: cpu ${cpu[at]} / gpu ${gpu[at]}`
    console.log(text)
    expect(Math.abs(gpu[at] - cpu[at]) <= 5e-6 ? 'agrees' : text).toBe('agrees')
  }
})

it('6×6 agrees also where it is worked out in one step', () => {
  const sensor = sampleMosaic(width, height, sixBySix)
  const [one, two] = [demosaicOnGpu(sensor, 128, false), demosaicOnGpu(sensor, 128, true)]
  expect(Math.max(...one.map((value, i) => Math.abs(value - two[i])))).toBeLessThanOrEqual(1e-6)
})
