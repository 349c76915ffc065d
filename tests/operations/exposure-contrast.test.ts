import Color from 'colorjs.io'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { exposureContrast } from '../../src/operations/exposure-contrast.ts'
import { applyOperation } from '../support/apply-operation.ts'

const channel = fc.integer({ min: 1, max: 1600 }).map((i) => i / 100)
const setting = fc.integer({ min: -100, max: 100 }).map((i) => i / 100)
const share = fc.integer({ min: 0, max: 100 }).map((i) => i / 100)

test('one EV is a factor of two (definition of exposure value, ISO 2720)', () => {
  expect(applyOperation(exposureContrast, [0.1, -0.2, 3], { exposureEv: 1 })).toEqual([0.2, -0.4, 6])
})

test('contrast is a slope in log–log about the pivot: grey follows pivot · (x / pivot)^slope', () => {
  for (const grey of [0.01, 0.18, 0.9, 4]) {
    const [r, g, b] = applyOperation(exposureContrast, [grey, grey, grey], { contrast: 0.5, pivotEv: 1 })
    expect(r).toBeCloseTo(0.36 * (grey / 0.36) ** Math.SQRT2, 12)
    expect([g, b]).toEqual([r, r])
  }
})

test('hue and relative chroma stay, whatever the setting (OKLCh of colorjs.io)', () => {
  fc.assert(
    fc.property(channel, channel, channel, setting, setting, share, (r, g, b, exposureEv, contrast, shoulder) => {
      fc.pre(Math.max(r, g, b) > 1.1 * Math.min(r, g, b))
      const before = new Color('rec2020-linear', [r, g, b]).to('oklch').coords as number[]
      const rgb = applyOperation(exposureContrast, [r, g, b], { exposureEv, contrast, shoulder })
      const after = new Color('rec2020-linear', rgb).to('oklch').coords as number[]
      expect(after[1] / after[0]).toBeCloseTo(before[1] / before[0], 6)
      expect(after[2]).toBeCloseTo(before[2], 3)
    }),
  )
})

test('with a shoulder nothing exceeds 1, and brighter never becomes darker', () => {
  for (const shoulder of [0.05, 0.5, 1]) {
    const levels = Array.from({ length: 400 }, (_, i) => 2 ** (-8 + i * 0.03))
    const shown = levels.map((x) => applyOperation(exposureContrast, [x, x / 2, x / 3], { shoulder })[0])
    expect(Math.max(...shown)).toBeLessThanOrEqual(1)
    shown.slice(1).forEach((value, i) => expect(value).toBeGreaterThan(shown[i] - 1e-15))
  }
})

test('below the shoulder’s knee nothing moves', () => {
  expect(applyOperation(exposureContrast, [0.4, 0.3, 0.1], { shoulder: 0.5 })).toEqual([0.4, 0.3, 0.1])
})
