import Color from 'colorjs.io'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { oklabToOklch, oklabToWorking, workingToOklab } from '../../src/colour/oklab.ts'
import { xyzToWorking } from '../../src/colour/working-space.ts'
import { transform } from '../../src/math/mat3.ts'
import { openJson } from '../support/open-data.ts'

const channel = fc.double({ min: -1, max: 16, noNaN: true })
const published = openJson<{
  oklab_from_XYZ: [number[], number[]][]
  oklch_srgb_primaries: Record<string, number[]>
}>('checks/check_values.json')

test('agrees with colorjs.io from linear Rec. 2020, beyond the gamut too', () => {
  fc.assert(
    fc.property(channel, channel, channel, (r, g, b) => {
      const expected = new Color('rec2020-linear', [r, g, b]).to('oklab').coords
      workingToOklab([r, g, b]).forEach((value, i) => expect(Math.abs(value - expected[i]!)).toBeLessThan(1e-5))
    }),
  )
})

test('the way back gives the same linear values', () => {
  fc.assert(
    fc.property(channel, channel, channel, (r, g, b) => {
      oklabToWorking(workingToOklab([r, g, b])).forEach((value, i) => expect(value).toBeCloseTo([r, g, b][i], 10))
    }),
  )
})

test.skipIf(!published)('has Ottosson’s published XYZ pairs to three digits (skipped without open data)', () => {
  for (const [xyz, expected] of published!.oklab_from_XYZ) {
    workingToOklab(transform(xyzToWorking, xyz)).forEach((value, i) =>
      expect(Math.abs(value - expected[i])).toBeLessThan(0.0011),
    )
  }
})

test.skipIf(!published)(
  'places the sRGB primaries where they are published in OKLCh (skipped without open data)',
  () => {
    for (const [name, [lightness, chroma, hue]] of Object.entries(published!.oklch_srgb_primaries)) {
      const working = new Color(name).to('rec2020-linear').coords as number[]
      const [l, c, h] = oklabToOklch(workingToOklab(working))
      expect(Math.abs(l - lightness)).toBeLessThan(1e-4)
      expect(Math.abs(c - chroma)).toBeLessThan(1e-4)
      const hueMeansNothing = chroma === 0
      expect(hueMeansNothing || Math.abs(h - hue) < 0.01).toBe(true)
    }
  },
)
