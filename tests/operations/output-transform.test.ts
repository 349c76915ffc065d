import Color from 'colorjs.io'
import * as fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { OUTPUT_SPACES, outputSpaceById } from '../../src/colour/output-space.ts'
import { decode } from '../../src/colour/transfer-curve.ts'
import { invert } from '../../src/math/mat3.ts'
import { outputTransform } from '../../src/operations/output-transform.ts'
import { applyOperation } from '../support/apply-operation.ts'

const encodedSpaces = { srgb: 'srgb', 'display-p3': 'p3', rec2020: '--rec2020-oetf', romm: 'prophoto' } as const
/** colorjs.io carries the ROMM primaries with more digits than ISO 22028-2 states; its other spaces agree closely. */
const agreement = { srgb: 1e-5, 'display-p3': 1e-5, rec2020: 1e-5, romm: 3e-4 } as const
const inside = fc.integer({ min: 0, max: 1000 }).map((i) => i / 1000)
const wide = fc.integer({ min: -30, max: 150 }).map((i) => i / 100)

describe.each(Object.values(OUTPUT_SPACES))('$title', ({ id }) => {
  const space = encodedSpaces[id]
  /** ROMM RGB is measured near its imaginary blue, where little chroma turns into much lightness. */
  const lightnessLimit = id === 'romm' ? 0.005 : 0.003

  test('colours inside the space are encoded as colorjs.io encodes them', () => {
    fc.assert(
      fc.property(inside, inside, inside, (r, g, b) => {
        const wanted = new Color(space, [r, g, b])
        const working = wanted.to('rec2020-linear').coords as number[]
        applyOperation(outputTransform, working, { space: id }).forEach((value, i) =>
          expect(Math.abs(value - [r, g, b][i])).toBeLessThan(agreement[id]),
        )
      }),
    )
  })

  test('colours outside keep lightness and hue within 2°, and nothing is negative or above 1', () => {
    fc.assert(
      fc.property(wide, wide, wide, (r, g, b) => {
        const before = new Color('rec2020-linear', [r, g, b]).to('oklch').coords as number[]
        const shown = applyOperation(outputTransform, [r, g, b], { space: id })
        expect(Math.min(...shown)).toBeGreaterThanOrEqual(0)
        expect(Math.max(...shown)).toBeLessThanOrEqual(1)
        const after = new Color(space, shown).to('oklch').coords as number[]
        expect(Math.abs(after[0] - Math.min(Math.max(before[0], 0), 1))).toBeLessThan(lightnessLimit)
        const hasHue = after[1] / after[0] > 0.005
        const turnDeg = Math.abs(((after[2] - before[2] + 540) % 360) - 180)
        expect(hasHue ? turnDeg : 0).toBeLessThanOrEqual(2)
      }),
      { numRuns: 500 },
    )
  })
})

test.each(['srgb', 'display-p3', 'rec2020'] as const)('%s: neighbours of the blue corner land beside it', (space) => {
  const corner = new Color(encodedSpaces[space], [0, 0, 1]).to('rec2020-linear').coords as number[]
  for (const offset of [-1e-6, 1e-6]) {
    for (const channel of [0, 1, 2]) {
      const neighbour = corner.with(channel, corner[channel] + offset)
      applyOperation(outputTransform, neighbour, { space }).forEach((value, i) =>
        expect(Math.abs(value - [0, 0, 1][i])).toBeLessThan(1e-3),
      )
    }
  }
})

// The primaries of ISO 22028-2 as stated; colorjs.io carries others whose blue lies outside of these.
test.each([0.003, 0.03, 0.3, 1])('ROMM RGB: its blue corner at %f is not pulled in by 32-bit rounding', (level) => {
  const toWorking = invert(outputSpaceById('romm').fromWorking)
  const linear = decode(outputSpaceById('romm').curve, level)
  const blue = [2, 5, 8].map((i) => toWorking[i] * linear)
  for (const rounded of [blue, blue.map(Math.fround), blue.map((value) => value * (1 + 2 ** -23))]) {
    applyOperation(outputTransform, rounded, { space: 'romm' }).forEach((value, i) =>
      expect(Math.abs(value - [0, 0, level][i])).toBeLessThan(1e-4),
    )
  }
})

test('a colour at the rim of sRGB is not pulled in', () => {
  const red = new Color('srgb', [1, 0, 0]).to('rec2020-linear').coords as number[]
  const shown = applyOperation(outputTransform, red)
  expect(shown[0]).toBeGreaterThan(0.9999)
  expect(Math.max(shown[1], shown[2])).toBeLessThan(2e-4)
})

test('NaN is drawn as 0; infinities as black and white', () => {
  expect(applyOperation(outputTransform, [NaN, NaN, NaN])).toEqual([0, 0, 0])
  expect(applyOperation(outputTransform, [-Infinity, -Infinity, -Infinity])).toEqual([0, 0, 0])
  expect(applyOperation(outputTransform, [Infinity, Infinity, Infinity])).toEqual([1, 1, 1])
})
