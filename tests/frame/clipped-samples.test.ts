// Clipped and black places, drawn at random: every one must be told of, and nothing clipped may enter a mean. What is clipped follows
// from how the sensor data was made.
import { describe, expect, it } from 'vitest'

import type { CfaColour, LinearData, SensorData } from '../../src/frame/frame.ts'
import { samplePatch } from '../../src/frame/sample-patch.ts'
import { type Outline, sampleRegion } from '../../src/frame/sample-region.ts'
import { bayer, makeLinear, makeMosaic, randomNumbers, sixBySix } from '../support/synthetic-sensor.ts'

const size = { width: 120, height: 96 }
const model = { fullScaleElectrons: 40_000, readNoiseElectrons: 3 }
type Light = (x: number, y: number, colour: CfaColour) => number
type Make = (light: Light, seed: number) => SensorData

const phases: [string, Make][] = [
  [0, 1, 1, 2],
  [1, 0, 2, 1],
  [1, 2, 0, 1],
  [2, 1, 1, 0],
].map((colours) => [
  `Bayer ${colours.join('')}`,
  (light, seed) => {
    const cfa = { ...bayer, colours: colours as CfaColour[] }
    return makeMosaic({ ...size, cfa, light, noise: { ...model, seed } })
  },
])
/** Codes of 8 bits with 0 and 255 at the ends, as a developed file has them. */
const eightBits: Make = (light) => {
  const { codes, ...rest } = makeLinear({ ...size, light, white: 255 }, [0, 0, 0]) as LinearData
  return { ...rest, codes: codes.map((code) => Math.min(code, 255)) } as LinearData
}
const sensors: [string, Make][] = [
  ...phases,
  ['6×6', (light, seed) => makeMosaic({ ...size, cfa: sixBySix, light, noise: { ...model, seed } })],
  ['8 bits', eightBits],
]

const square: Outline = [
  [0.3, 0.3],
  [0.7, 0.3],
  [0.7, 0.7],
  [0.3, 0.7],
]
const samplesOf = (sensor: SensorData) => [
  samplePatch(sensor, model, [0.5, 0.5], 18),
  sampleRegion(sensor, model, square),
]
const cases = Array.from({ length: 40 }, (_, seed) => {
  const random = randomNumbers(seed + 1)
  const grey = [0.15 + 0.4 * random(), 0.15 + 0.4 * random(), 0.15 + 0.4 * random()]
  return {
    seed: seed + 1,
    channel: (seed % 3) as CfaColour,
    grey,
    over: 1.05 + 2 * random(),
    share: 0.25 + 0.5 * random(),
  }
})

describe.each(sensors)('%s', (_name, make) => {
  it.each(cases)(
    'draw $seed: a wholly clipped channel gives no neutral and says so',
    ({ seed, channel, grey, over }) => {
      const sensor = make((_x, _y, colour) => (colour === channel ? over : grey[colour]), seed)
      for (const sample of samplesOf(sensor)) {
        expect(sample).toMatchObject({ reliability: 'clipped', meanCameraRgb: null, clippedShare: 1 })
        expect(sample.sentence).toMatch(/^Clipped/)
      }
    },
  )

  it.each(cases)('draw $seed: a partly clipped place is told of, and its mean is that of the rest', (drawn) => {
    const { seed, channel, grey, over, share } = drawn
    // Columns of six, the width of every array, so that a clipped photosite clips whole cells only.
    const isClipped = (x: number) => (Math.floor(x / 6) * 0.618) % 1 < share
    const sensor = make((x, _y, colour) => (colour === channel && isClipped(x) ? over : grey[colour]), seed)
    for (const sample of samplesOf(sensor)) {
      expect(sample.clippedShare).toBeGreaterThan(0.05)
      expect(sample.sentence).toMatch(/clipped/)
      expect(sample.sentence).not.toMatch(/none clipped/)
      expect(sample.reliability === 'good' && sample.clippedShare >= 0.2).toBe(false)
      sample.meanCameraRgb?.forEach((value, c) => expect(Math.abs(Math.log2(value / grey[c]))).toBeLessThan(0.03))
    }
  })

  it.each(cases)('draw $seed: a black channel is told of', ({ seed, channel, grey }) => {
    const sensor = make((_x, _y, colour) => (colour === channel ? 0 : grey[colour]), seed)
    for (const { reliability, sentence } of samplesOf(sensor)) {
      expect(reliability).toBe('too dark')
      expect(sentence).toMatch(/dark/)
    }
  })
})
