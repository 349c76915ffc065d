import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { rgbToXyz, SRGB_PRIMARIES } from '../../src/colour/primaries.ts'
import { visibleMatrix } from '../../src/operations/visible-matrix.ts'
import { applyOperation, plainFacts } from '../support/apply-operation.ts'

test('for a camera whose channels are sRGB it is the way from sRGB to Rec. 2020 of colorjs.io', () => {
  const facts = { ...plainFacts, cameraToXyz: rgbToXyz(SRGB_PRIMARIES) }
  const expected = new Color('srgb-linear', [0.7, 0.2, 0.05]).to('rec2020-linear').coords
  applyOperation(visibleMatrix, [0.7, 0.2, 0.05], { amountPercent: 100 }, { facts }).forEach((value, i) =>
    expect(Math.abs(value - expected[i]!)).toBeLessThan(1e-5),
  )
  const half = applyOperation(visibleMatrix, [0.7, 0.2, 0.05], { amountPercent: 50 }, { facts })
  half.forEach((value, i) => expect(value).toBeCloseTo(([0.7, 0.2, 0.05][i] + expected[i]!) / 2, 5))
})

test('without a matrix nothing changes', () => {
  expect(applyOperation(visibleMatrix, [0.7, 0.2, 0.05], { amountPercent: 100 })).toEqual([0.7, 0.2, 0.05])
})
