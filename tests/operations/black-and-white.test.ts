import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { blackAndWhite, greyShares } from '../../src/operations/black-and-white.ts'
import { applyOperation } from '../support/apply-operation.ts'

const lch = (rgb: readonly number[]) =>
  new Color('rec2020-linear', [...rgb] as [number, number, number]).to('oklch').coords as number[]

test('shares sum to 1 for weights of any sign, so greys keep their level to 1/65535', () => {
  for (const [red, green, blue] of [
    [0, 0, 0],
    [100, 0, 0],
    [-200, 200, -200],
    [200, 200, 200],
    [37, -91, 140],
  ]) {
    expect(greyShares(red, green, blue).reduce((sum, share) => sum + share)).toBeCloseTo(1, 12)
    for (let i = 0; i <= 256; i++) {
      const level = i / 256
      for (const value of applyOperation(blackAndWhite, [level, level, level], { red, green, blue })) {
        expect(Math.abs(value - level)).toBeLessThan(1 / 65535)
      }
    }
  }
})

test('all at 0 is the mean, red at 100 % the red channel alone, and −50 % of all but one takes twice from it (by hand)', () => {
  expect(applyOperation(blackAndWhite, [0.9, 0.3, 0.3])[1]).toBeCloseTo(0.5, 12)
  expect(applyOperation(blackAndWhite, [0.7, 0.3, 0.1], { red: 100 })[2]).toBeCloseTo(0.7, 12)
  expect(greyShares(-50, 100, -50)[1]).toBeCloseTo(4 / 3, 12)
  expect(greyShares(-50, 100, -50)[0]).toBeCloseTo(-1 / 6, 12)
})

test('a tone has the lightness of the grey and the hue asked for (OKLCh of colorjs.io)', () => {
  const values = { shadowHueDeg: 250, shadowStrength: 60, highlightHueDeg: 80, highlightStrength: 40 }
  for (const [level, wantedDeg] of [
    [0.002, 250],
    [0.006, 250],
    [0.6, 80],
    [0.8, 80],
  ]) {
    const [lightness, chroma, hueDeg] = lch(applyOperation(blackAndWhite, [level, level, level], values))
    expect(lightness).toBeCloseTo(Math.cbrt(level), 4)
    expect(chroma).toBeGreaterThan(0.002)
    expect(hueDeg).toBeCloseTo(wantedDeg, 1)
  }
})

test('black and white stay neutral under any tone, unless white is asked to take it', () => {
  const values = { shadowStrength: 100, highlightStrength: 100, highlightHueDeg: 60 }
  expect(applyOperation(blackAndWhite, [0, 0, 0], values)).toEqual([0, 0, 0])
  for (const value of applyOperation(blackAndWhite, [1, 1, 1], values)) expect(value).toBeCloseTo(1, 12)
  expect(lch(applyOperation(blackAndWhite, [1, 1, 1], { ...values, toneWhite: true }))[1]).toBeCloseTo(0.12, 4)
})
