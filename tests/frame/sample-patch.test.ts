// The neutral picker's sample. The values of √var were computed with the simulator that the error formula comes from,
// before this code; rates of right words are held by the simulated scenes.
import { describe, expect, it } from 'vitest'
import type { CfaColour } from '../../src/frame/frame.ts'
import { noiseVariance } from '../../src/frame/pick-error.ts'
import { samplePatch } from '../../src/frame/sample-patch.ts'
import { evenBlack, makeLinear, makeMosaic, oneChannel, sixBySix } from '../support/synthetic-sensor.ts'

const noise = { fullScaleElectrons: 50000, readNoiseElectrons: 3 }
const stone = [0.5, 0.133, 0.0645]
const size = { width: 120, height: 80 }
const flat = (_x: number, _y: number, colour: CfaColour) => stone[colour]

describe('noise of a pick', () => {
  it.each([
    { mean: [0.5, 0.133, 0.0645], full: 50000, stops: 0.00462 },
    { mean: [0.02, 0.0053, 0.0026], full: 50000, stops: 0.02362 },
    { mean: [0.02, 0.0053, 0.0026], full: 3125, stops: 0.12552 },
  ])('49 cells of $mean at $full electrons: $stops stop', ({ mean, full, stops }) => {
    const model = { fullScaleElectrons: full, readNoiseElectrons: 3 }
    expect(Math.sqrt(noiseVariance(mean, 49, model, [1, 2, 1]))).toBeCloseTo(stops, 5)
  })
})

describe('mean', () => {
  it.each([
    { name: 'Bayer', sensor: makeMosaic({ ...size, light: flat }) },
    { name: '6×6', sensor: makeMosaic({ ...size, cfa: sixBySix, light: flat }) },
    { name: 'three channels', sensor: makeLinear({ ...size, light: flat }, [10, 20, 30]) },
  ])('of a flat patch is the patch: $name', ({ sensor }) => {
    const sample = samplePatch(sensor, noise, [0.5, 0.5], 20)
    sample.meanCameraRgb?.forEach((value, channel) => expect(value).toBeCloseTo(stone[channel], 4))
    expect(sample).toMatchObject({ reliability: 'good', clippedShare: 0, twoMaterials: false })
    expect(sample.sentence).toMatch(/^Good pick: \d+ cells, none clipped, ±0\.0\d+ stop\.$/)
  })

  it('is equal in all channels of a one-channel sensor', () => {
    const sample = samplePatch(makeMosaic({ ...size, cfa: oneChannel, light: () => 0.3 }), noise, [0.5, 0.5], 9)
    expect(new Set(sample.meanCameraRgb)).toHaveLength(1)
    expect(sample.reliability).toBe('good')
  })

  it('leaves out every cell with a clipped photosite, whole', () => {
    const sensor = makeMosaic({ ...size, light: (x, y, colour) => (x % 4 === 0 && y % 2 === 0 ? 1.2 : stone[colour]) })
    const sample = samplePatch(sensor, noise, [0.5, 0.5], 20)
    sample.meanCameraRgb?.forEach((value, channel) => expect(value).toBeCloseTo(stone[channel], 4))
    expect(sample.clippedShare).toBeCloseTo(0.5, 1)
    expect(sample.reliability).not.toBe('good')
    expect(sample.sentence).toContain('clipped')
  })

  it('leaves out cells of another colour, whole, and keeps noise', () => {
    const leaf = [0.6, 0.35, 0.25]
    const light = (x: number, y: number, c: CfaColour) => (x % 24 < 4 && y > 20 ? leaf : stone)[c]
    const noisy = { fullScaleElectrons: 20_000, readNoiseElectrons: 3 }
    const sensor = makeMosaic({ ...size, light, noise: { ...noisy, seed: 7 } })
    const sample = samplePatch(sensor, noisy, [0.5, 0.5], 30)
    const ratio = (a: number, b: number) => Math.log2(sample.meanCameraRgb![a] / sample.meanCameraRgb![b])
    expect(ratio(0, 1)).toBeCloseTo(Math.log2(stone[0] / stone[1]), 2)
    expect(ratio(2, 1)).toBeCloseTo(Math.log2(stone[2] / stone[1]), 2)
    expect(sample).toMatchObject({ reliability: 'good', twoMaterials: false, clippedShare: 0 })
    const plain = samplePatch(makeMosaic({ ...size, light: flat, noise: { ...noisy, seed: 7 } }), noisy, [0.5, 0.5], 30)
    expect(sample.cells / plain.cells).toBeGreaterThan(0.8)
    expect(sample.cells / plain.cells).toBeLessThan(0.9)
    expect(plain.cells).toBeGreaterThan(0.97 * ((Math.PI * 30 ** 2) / 4))
  })

  it('keeps dark photosites, so that blue is not biased in low light', () => {
    const dark = [0.02, 0.0053, 0.0026]
    const light = (_x: number, _y: number, colour: CfaColour) => dark[colour]
    const few = { fullScaleElectrons: 3125, readNoiseElectrons: 3 }
    const sensor = makeMosaic({ width: 400, height: 400, light, noise: { ...few, seed: 3 } })
    const sample = samplePatch(sensor, few, [0.5, 0.5], 160)
    const [red, , blue] = sample.meanCameraRgb ?? [NaN, NaN, NaN]
    expect(Math.abs(Math.log2(red / blue) - Math.log2(dark[0] / dark[2]))).toBeLessThan(0.1)
  })

  it('takes the cell under the pointer when the disc is smaller than a cell, at every edge', () => {
    const sensor = makeMosaic({ width: 21, height: 13, light: flat })
    for (const x of [0, 0.5, 1]) {
      for (const y of [0, 0.5, 1]) expect(samplePatch(sensor, noise, [x, y], 0).cells).toBeGreaterThan(0)
    }
  })
})

describe('words', () => {
  it('clipped: nothing usable', () => {
    const sample = samplePatch(makeMosaic({ ...size, light: () => 1 }), noise, [0.5, 0.5], 12)
    expect(sample).toMatchObject({ reliability: 'clipped', meanCameraRgb: null, clippedShare: 1, cells: 0 })
  })

  it('too dark: black with noise, judged on the mean', () => {
    const sensor = makeMosaic({ ...size, light: () => 0, noise: { ...noise, seed: 5 } })
    const sample = samplePatch(sensor, noise, [0.5, 0.5], 12)
    expect(sample.reliability).toBe('too dark')
    expect(sample.sentence).toMatch(/^Too dark: /)
  })

  it('too dark: blue alone', () => {
    const sensor = makeMosaic({
      ...size,
      light: (_x, _y, colour) => [0.1, 0.05, 0][colour],
      noise: { ...noise, seed: 1 },
    })
    const { reliability, sentence } = samplePatch(sensor, noise, [0.5, 0.5], 12)
    expect([reliability, sentence]).toEqual(['too dark', expect.stringContaining('blue cannot')])
  })

  it('two materials: the edge between them', () => {
    const leaf = [0.5, 0.2, 0.06]
    const light = (x: number, _y: number, colour: CfaColour) => (x < 60 ? stone : leaf)[colour]
    const sensor = makeMosaic({ ...size, light, noise: { ...noise, seed: 2 } })
    const sample = samplePatch(sensor, noise, [0.5, 0.5], 24)
    expect(sample).toMatchObject({ twoMaterials: true, reliability: 'poor' })
    expect(sample.sentence).toContain('two materials')
    expect(samplePatch(sensor, noise, [0.2, 0.5], 20).twoMaterials).toBe(false)
  })

  it('the expected error of noisy flat patches is the error they have', () => {
    let squares = 0
    let predicted = 0
    const draws = 60
    for (let seed = 0; seed < draws; seed++) {
      const sensor = makeMosaic({ width: 40, height: 40, light: flat, noise: { ...noise, seed } })
      const { meanCameraRgb, errorStops } = samplePatch(sensor, noise, [0.5, 0.5], 12)
      const [r, g, b] = (meanCameraRgb ?? [NaN, NaN, NaN]).map((value, channel) => Math.log2(value / stone[channel]))
      squares += (r - g) ** 2 + (b - g) ** 2
      predicted += errorStops ** 2
    }
    expect(Math.sqrt(squares / predicted)).toBeGreaterThan(0.6)
    expect(Math.sqrt(squares / predicted)).toBeLessThan(1.2)
  })
})

it('a large disc reads a lattice of the same cells wherever it moves', () => {
  const sensor = makeMosaic({ width: 1200, height: 900, black: evenBlack(0), light: flat })
  const { cells, meanCameraRgb } = samplePatch(sensor, noise, [0.4, 0.6], 350)
  expect(cells).toBeGreaterThan(2000)
  expect(cells).toBeLessThan(5000)
  expect(meanCameraRgb?.[0]).toBeCloseTo(stone[0], 4)
})
