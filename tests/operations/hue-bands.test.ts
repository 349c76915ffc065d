import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { hueBands, readBands, writeBands, type HueBand } from '../../src/operations/hue-bands.ts'
import { initialValues } from '../../src/operations/values.ts'
import { applyOperation } from '../support/apply-operation.ts'

const plain = readBands(initialValues(hueBands).bands)
const withBand = (index: number, change: Partial<HueBand>) =>
  writeBands(plain.map((band, i) => (i === index ? { ...band, ...change } : band)))
const fromOklch = (lightness: number, chroma: number, hueDeg: number) =>
  new Color('oklch', [lightness, chroma, hueDeg]).to('rec2020-linear').coords as number[]
/** OKLCh of colorjs.io. */
const oklch = (rgb: readonly number[]) =>
  new Color('rec2020-linear', [...rgb] as [number, number, number]).to('oklch').coords as number[]
const apart = (a: number, b: number) => Math.abs(((a - b + 540) % 360) - 180)

test('a hue is placed within 1° and keeps its lightness within .005 (OKLCh of colorjs.io)', () => {
  for (const [hueDeg, turnDeg] of [
    [83, -40],
    [248, 25],
    [359, 30],
    [2, -90],
  ]) {
    const bands = withBand(3, { hueDeg, turnDeg })
    for (const chroma of [0.03, 0.08, 0.15]) {
      const [lightness, newChroma, hue] = oklch(applyOperation(hueBands, fromOklch(0.7, chroma, hueDeg), { bands }))
      expect(apart(hue, hueDeg + turnDeg)).toBeLessThan(1)
      expect(Math.abs(lightness - 0.7)).toBeLessThan(0.005)
      expect(Math.abs(newChroma - chroma)).toBeLessThan(0.001)
    }
  }
})

test('shares of the bands sum to one: the same change in all is that change at every hue', () => {
  const hues = [3, 350, 170, 40, 41, 200, 290, 120]
  const bands = writeBands(hues.map((hueDeg) => ({ hueDeg, turnDeg: 37, strengthStops: 1, lightEv: 0 })))
  for (let hueDeg = 0; hueDeg < 360; hueDeg += 2.5) {
    const [lightness, chroma, hue] = oklch(applyOperation(hueBands, fromOklch(0.7, 0.05, hueDeg), { bands }))
    expect(apart(hue, hueDeg + 37)).toBeLessThan(0.01)
    expect(chroma).toBeCloseTo(0.1, 5)
    expect(lightness).toBeCloseTo(0.7, 5)
  }
})

test('from hue to hue the result never jumps, across the whole circle', () => {
  const bands = withBand(7, { hueDeg: 340, turnDeg: 60, strengthStops: 1.5, lightEv: -1 })
  let before = applyOperation(hueBands, fromOklch(0.7, 0.1, 359.9), { bands })
  for (let hueDeg = 0; hueDeg < 360; hueDeg += 0.1) {
    const now = applyOperation(hueBands, fromOklch(0.7, 0.1, hueDeg), { bands })
    expect(Math.max(...now.map((value, i) => Math.abs(value - before[i])))).toBeLessThan(0.01)
    before = now
  }
})

test('near-greys, C/L below .0025, do not move; light of a band is exposure', () => {
  const bands = withBand(0, { turnDeg: 90, strengthStops: 3, lightEv: 2 })
  const grey = fromOklch(0.7, 0.0017, 20)
  expect(applyOperation(hueBands, grey, { bands })).toEqual(grey)
  const colour = fromOklch(0.7, 0.1, 20)
  applyOperation(hueBands, colour, { bands: withBand(0, { lightEv: 1 }) }).forEach((value, i) =>
    expect(value / colour[i]).toBeCloseTo(2, 6),
  )
})
