// How far picks from developed files can be trusted, held to simulation: flat patches of known colour with noise of some share of
// an 8-bit step, rounded, and for JPEG also compressed with halved colour. The actual error must agree with the one that is told.
import encodeJpeg from '@jsquash/jpeg/encode.js'
import { beforeAll, expect, it } from 'vitest'
import { prepareJpegEncoder, prepareNodeJpegDecoder } from '../../src/commands/node-jpeg.ts'
import { decode, encode, SRGB_CURVE } from '../../src/colour/transfer-curve.ts'
import { decodeJpeg } from '../../src/decode/decode-developed.ts'
import { developedNoise } from '../../src/decode/developed-noise.ts'
import { linearise } from '../../src/decode/linearise.ts'
import type { NoiseModel, SensorData } from '../../src/frame/frame.ts'
import { samplePatch } from '../../src/frame/sample-patch.ts'
import { normalNumbers, randomNumbers } from '../support/synthetic-sensor.ts'

const curve = (encoded: number) => decode(SRGB_CURVE, encoded)
/** Patches of 32 pixels, 16 across and down; the middle of each is sampled. */
const side = 32
const across = 16
const width = side * across

beforeAll(async () => {
  await prepareJpegEncoder()
  await prepareNodeJpegDecoder()
})

interface Field {
  readonly colours: readonly (readonly number[])[]
  readonly rgba: Uint8ClampedArray<ArrayBuffer>
}

/** Patches about a linear level, with normal noise of `sigma` steps on every encoded channel. */
function paint(level: number, sigma: number): Field {
  const random = randomNumbers(Math.round(level * 1e5 + sigma * 100))
  const normal = normalNumbers(Math.round(level * 1e5 + sigma * 100) + 1)
  const colours = Array.from({ length: across ** 2 }, () => [0, 0, 0].map(() => level * 2 ** (random() - 0.5)))
  const rgba = new Uint8ClampedArray(width * width * 4).fill(255)
  for (let i = 0; i < width * width; i++) {
    const patch = Math.floor(i / width / side) * across + Math.floor((i % width) / side)
    for (let c = 0; c < 3; c++)
      rgba[i * 4 + c] = Math.round(encode(SRGB_CURVE, colours[patch][c]) * 255 + sigma * normal())
  }
  return { colours, rgba }
}

/** Root mean square of the actual error in errors told, and the median of those told in stops. */
function trust({ colours }: Field, sensor: SensorData, noise: NoiseModel) {
  const told: number[] = []
  let squares = 0
  for (const [patch, [red, green, blue]] of colours.entries()) {
    const centre = [(patch % across) + 0.5, Math.floor(patch / across) + 0.5].map((at) => at / across)
    const { meanCameraRgb, errorStops } = samplePatch(sensor, noise, centre as [number, number], 12)
    if (!meanCameraRgb) continue
    const [r, g, b] = meanCameraRgb
    squares += (Math.log2(r / g / (red / green)) ** 2 + Math.log2(b / g / (blue / green)) ** 2) / errorStops ** 2
    told.push(errorStops)
  }
  return { ratio: Math.sqrt(squares / told.length), told: told.sort((a, b) => a - b)[told.length >> 1] }
}

const levels = [0.3, 0.08, 0.02, 0.005]

it.each([0, 0.2, 0.4, 1, 2])('rounded to 8 bits, noise of %f steps', (sigma) => {
  for (const level of levels) {
    const field = paint(level, sigma)
    const pixels = {
      width,
      height: width,
      codes: field.rgba,
      stride: 4,
      channels: 3,
      bits: 8,
      inverted: false,
    } as const
    const sensor = linearise(pixels, [curve, curve, curve], 1)
    const { ratio, told } = trust(field, sensor, developedNoise(sensor, curve, { bits: 8, chromaQuantiser: null }))
    console.info(
      `8 bits, noise ${sigma} steps, level ${level}: told ±${told.toFixed(4)} stop, actual ${ratio.toFixed(2)} of it`,
    )
    expect(ratio, `level ${level}`).toBeLessThan(1.25)
    expect(ratio, `level ${level}`).toBeGreaterThan(0.1)
  }
})

it.each([
  [95, 0],
  [88, 0],
  [88, 1],
  [88, 3],
  [60, 1],
])('a JPEG of quality %i with halved colour, noise of %f steps', async (quality, sigma) => {
  for (const level of levels) {
    const field = paint(level, sigma)
    const image = { data: field.rgba, width, height: width, colorSpace: 'srgb' } as ImageData
    const options = { quality, auto_subsample: false, chroma_subsample: 2 } as const
    const bytes = new Uint8Array(await encodeJpeg(image, options))
    const { sensor, facts } = await decodeJpeg({ fileName: 'patches.jpg', bytes })
    const { ratio, told } = trust(field, sensor, facts.noise)
    console.info(
      `JPEG ${quality}, noise ${sigma} steps, level ${level}: told ±${told.toFixed(4)} stop, actual ${ratio.toFixed(2)} of it`,
    )
    expect(ratio, `level ${level}`).toBeLessThan(1.25)
  }
})
