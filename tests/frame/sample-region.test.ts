// Samples inside an outline against frames whose light is known by construction.
import { describe, expect, it } from 'vitest'
import type { CfaColour } from '../../src/frame/frame.ts'
import { type Outline, sampleRegion } from '../../src/frame/sample-region.ts'
import { makeMosaic, sixBySix } from '../support/synthetic-sensor.ts'

const noise = { fullScaleElectrons: 20_000, readNoiseElectrons: 3 }
const size = { width: 300, height: 200 }
const grey = [0.5, 0.2, 0.1]
const leaf = [0.6, 0.35, 0.25]
const triangle: Outline = [
  [0.1, 0.1],
  [0.5, 0.1],
  [0.1, 0.9],
]

const flat = (_x: number, _y: number, colour: CfaColour) => grey[colour]

describe('inside an outline', () => {
  it.each([
    { name: 'Bayer', cfa: undefined, cellArea: 4 },
    { name: '6×6', cfa: sixBySix, cellArea: 9 },
  ])('cells are counted by area and averaged: $name', ({ cfa, cellArea }) => {
    const sample = sampleRegion(makeMosaic({ ...size, cfa, light: flat }), noise, triangle)
    expect(sample.meanCameraRgb).toEqual(grey.map((value) => expect.closeTo(value, 3)))
    const wanted = (0.5 * 0.4 * 0.8 * size.width * size.height) / cellArea
    expect(sample.cells / wanted).toBeGreaterThan(0.9)
    expect(sample.cells / wanted).toBeLessThan(1.1)
    expect(sample.reliability).toBe('good')
  })

  it('what lies outside does not count', () => {
    const light = (x: number, y: number, c: CfaColour) => (x / 300 > 0.52 || y / 200 > 0.92 ? leaf : grey)[c]
    const sample = sampleRegion(makeMosaic({ ...size, light }), noise, triangle)
    expect(sample.meanCameraRgb).toEqual(grey.map((value) => expect.closeTo(value, 3)))
  })

  it('an outline that crosses itself holds its two parts', () => {
    const bow: Outline = [
      [0.1, 0.1],
      [0.9, 0.9],
      [0.9, 0.1],
      [0.1, 0.9],
    ]
    const middleColumn = (x: number, _y: number, c: CfaColour) => (Math.abs(x - 150) < 10 ? grey : leaf)[c]
    const sample = sampleRegion(makeMosaic({ ...size, light: middleColumn }), noise, bow)
    expect(sample.meanCameraRgb).toEqual(leaf.map((value) => expect.closeTo(value, 3)))
  })

  it('cells of another colour are left out, noise is not', () => {
    const light = (x: number, y: number, c: CfaColour) => (Math.floor(x / 10) % 8 === 3 && y % 40 < 12 ? leaf : grey)[c]
    const sensor = makeMosaic({ ...size, light, noise: { ...noise, seed: 9 } })
    const { meanCameraRgb, twoMaterials } = sampleRegion(sensor, noise, triangle)
    expect(twoMaterials).toBe(false)
    const stops = (m: readonly number[]) => [Math.log2(m[0] / m[1]), Math.log2(m[2] / m[1])]
    expect(stops(meanCameraRgb!)).toEqual(stops(grey).map((value) => expect.closeTo(value, 2)))
    const noisy = sampleRegion(makeMosaic({ ...size, light: flat, noise: { ...noise, seed: 9 } }), noise, triangle)
    expect(noisy.cells).toBeGreaterThan(0.97 * 0.5 * 0.4 * 0.8 * 150 * 100)
  })

  it('dark cells stay, so that blue is not biased', () => {
    const dark = [0.02, 0.0053, 0.0026]
    const few = { fullScaleElectrons: 3125, readNoiseElectrons: 3 }
    const light = (_x: number, _y: number, c: CfaColour) => dark[c]
    const { meanCameraRgb } = sampleRegion(makeMosaic({ ...size, light, noise: { ...few, seed: 4 } }), few, triangle)
    expect(Math.abs(Math.log2(meanCameraRgb![2] / dark[2]))).toBeLessThan(0.08)
  })
})

it('refuses what holds nothing', () => {
  const sensor = makeMosaic({ ...size, light: flat })
  const outside: Outline = [
    [1.1, 0],
    [1.2, 0],
    [1.2, 1],
  ]
  for (const outline of [triangle.slice(0, 2), outside]) {
    expect(() => sampleRegion(sensor, noise, outline)).toThrow('holds no part of the picture')
  }
  expect(sampleRegion(makeMosaic({ ...size, light: () => 1 }), noise, triangle).reliability).toBe('clipped')
})
