import { expect, test } from 'vitest'
import { decodeAcescct, encodeAcescct } from '../../src/colour/acescct.ts'

// Academy S-2016-001, six digits as a general colour library gives them.
test.each([
  [0, 0.072906],
  [0.0078125, 0.155251],
  [0.18, 0.413588],
  [1, 0.554795],
  [222.875, 1.000005],
])('%f is coded as %f, and back', (linear, coded) => {
  expect(Math.abs(encodeAcescct(linear) - coded)).toBeLessThan(6e-7)
  expect(decodeAcescct(encodeAcescct(linear))).toBeCloseTo(linear, 9)
})
