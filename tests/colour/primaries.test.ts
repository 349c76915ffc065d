import Color from 'colorjs.io'
import { describe, expect, test } from 'vitest'
import { transform } from '../../src/math/mat3.ts'
import {
  adaptWhite,
  D50,
  D65,
  DISPLAY_P3_PRIMARIES,
  REC2020_PRIMARIES,
  rgbToXyz,
  ROMM_PRIMARIES,
  SRGB_PRIMARIES,
} from '../../src/colour/primaries.ts'
import { openJson } from '../support/open-data.ts'

const spaces = [
  ['rgb_sRGB', SRGB_PRIMARIES, 'srgb-linear', 'xyz-d65'],
  ['rgb_Display P3', DISPLAY_P3_PRIMARIES, 'p3-linear', 'xyz-d65'],
  ['rgb_ITU-R BT.2020', REC2020_PRIMARIES, 'rec2020-linear', 'xyz-d65'],
  ['rgb_ROMM RGB', ROMM_PRIMARIES, 'prophoto-linear', 'xyz-d50'],
] as const

const rgb: [number, number, number] = [0.9, 0.2, 0.45]
const published = openJson<Record<string, { RGB_to_XYZ: number[][] }>>('checks/check_values.json')

describe.each(spaces)('%s', (name, primaries, space, xyzSpace) => {
  // 1e-5: colorjs.io carries the ROMM primaries with more digits than ISO 22028-2 states.
  test('goes to XYZ as colorjs.io takes it', () => {
    const expected = new Color(space, rgb).to(xyzSpace).coords
    transform(rgbToXyz(primaries), rgb).forEach((value, i) => expect(Math.abs(value - expected[i]!)).toBeLessThan(1e-5))
  })

  test.skipIf(!published)('has the six published digits of its matrix (skipped without open data)', () => {
    const expected = published![name].RGB_to_XYZ.flat()
    rgbToXyz(primaries).forEach((value, i) => expect(Math.abs(value - expected[i])).toBeLessThan(1.1e-6))
  })
})

test('Bradford from D65 to D50 is the one of colorjs.io', () => {
  const expected = new Color('xyz-d65', [0.3, 0.5, 0.8]).to('xyz-d50').coords
  transform(adaptWhite(D65, D50), [0.3, 0.5, 0.8]).forEach((value, i) =>
    expect(value).toBeCloseTo(expected[i] as number, 6),
  )
})
