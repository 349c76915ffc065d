import Color from 'colorjs.io'
import * as fc from 'fast-check'
import { expect, test } from 'vitest'
import { hueTurn } from '../../src/operations/hue-turn.ts'
import { applyOperation } from '../support/apply-operation.ts'
import { openJson } from '../support/open-data.ts'

type Triple = [number, number, number]
interface Vector {
  readonly linear: Triple
  readonly hue_inverted_linear: Triple
  readonly hue_inverted_oklch: Triple
}
const vectors = openJson<Record<string, Vector>>('checks/mapping_test_vectors.json')
const names = ['sky_590_neutral_concrete_unswapped', 'foliage_590_unswapped', 'test']
const toWorking = (linear: Triple) => new Color('srgb-linear', linear).to('rec2020-linear').coords as Triple

test.skipIf(!vectors).each(names)('%s: hue inversion is the turn by 180° (skipped without open data)', (name) => {
  const { linear, hue_inverted_linear, hue_inverted_oklch } = vectors![name]
  const turned = new Color('rec2020-linear', applyOperation(hueTurn, toWorking(linear), { angleDeg: 180 }))
  turned.to('srgb-linear').coords.forEach((value, i) => {
    expect(Math.abs(value! - hue_inverted_linear[i])).toBeLessThan(1e-5)
  })
  const [lightness, chroma, hue] = turned.to('oklch').coords
  expect(Math.abs(lightness! - hue_inverted_oklch[0])).toBeLessThan(1e-5)
  expect(Math.abs(chroma! - hue_inverted_oklch[1])).toBeLessThan(1e-5)
  expect(Math.abs(hue! - hue_inverted_oklch[2])).toBeLessThan(0.01)
})

test('turns by any angle as colorjs.io does in OKLCh', () => {
  const channel = fc.integer({ min: 1, max: 400 }).map((i) => i / 100)
  fc.assert(
    fc.property(channel, channel, channel, fc.integer({ min: -180, max: 180 }), (r, g, b, angleDeg) => {
      const expected = new Color('rec2020-linear', [r, g, b]).set('oklch.h', (hue) => hue + angleDeg).coords
      applyOperation(hueTurn, [r, g, b], { angleDeg }).forEach((value, i) =>
        expect(Math.abs(value - expected[i]!)).toBeLessThan(1e-5),
      )
    }),
  )
})
