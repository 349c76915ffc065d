import Color from 'colorjs.io'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { OUTPUT_SPACES, outputSpaceById } from '../../src/colour/output-space.ts'
import { rowSums } from '../../src/colour/mix-matrices.ts'
import { transform } from '../../src/math/mat3.ts'

const linearSpaces = {
  srgb: 'srgb-linear',
  'display-p3': 'p3-linear',
  rec2020: 'rec2020-linear',
  romm: 'prophoto-linear',
} as const
const channel = fc.double({ min: -0.2, max: 2, noNaN: true })

// 2e-5 at values up to 2: colorjs.io carries the ROMM primaries with more digits than ISO 22028-2 states.
test.each(Object.values(OUTPUT_SPACES))('$title is reached from working values as colorjs.io reaches it', (space) => {
  fc.assert(
    fc.property(channel, channel, channel, (r, g, b) => {
      const expected = new Color('rec2020-linear', [r, g, b]).to(linearSpaces[space.id]).coords
      transform(space.fromWorking, [r, g, b]).forEach((value, i) =>
        expect(Math.abs(value - expected[i]!)).toBeLessThan(2e-5),
      )
    }),
  )
})

test.each(Object.values(OUTPUT_SPACES))('white stays white in $title', (space) => {
  for (const sum of rowSums(space.fromWorking)) expect(sum).toBeCloseTo(1, 12)
})

test('an unknown space is refused in words', () => {
  expect(() => outputSpaceById('cmyk')).toThrow(/No output space is called “cmyk”; known are srgb/)
})
