import Color from 'colorjs.io'
import { describe, expect, test } from 'vitest'
import { decode, encode, REC2020_CURVE, ROMM_CURVE, SRGB_CURVE } from '../../src/colour/transfer-curve.ts'
import { openJson } from '../support/open-data.ts'

const ramp = [0, 1e-5, 0.0015, 0.003, 0.0035, 0.018, 0.02, 0.18, 0.5, 0.9, 1]

describe.each([
  ['sRGB', SRGB_CURVE, 'srgb-linear', 'srgb'],
  ['the camera curve of BT.2020', REC2020_CURVE, 'rec2020-linear', '--rec2020-oetf'],
  ['ROMM RGB', ROMM_CURVE, 'prophoto-linear', 'prophoto'],
] as const)('%s', (_, curve, linearSpace, encodedSpace) => {
  test('encodes as colorjs.io does', () => {
    for (const linear of ramp) {
      const expected = new Color(linearSpace, [linear, linear, linear]).to(encodedSpace).coords[0] as number
      expect(Math.abs(encode(curve, linear) - expected)).toBeLessThan(1e-7)
    }
  })

  test('decodes what it encoded', () => {
    for (const linear of ramp) expect(decode(curve, encode(curve, linear))).toBeCloseTo(linear, 7)
  })
})

const published = openJson<{ sRGB_f: Record<string, number> }>('checks/check_values.json')
test.skipIf(!published)('sRGB has its published values, IEC 61966-2-1 (skipped without open data)', () => {
  for (const [linear, encoded] of Object.entries(published!.sRGB_f)) {
    expect(Math.abs(encode(SRGB_CURVE, Number(linear)) - encoded)).toBeLessThan(1e-6)
  }
})
