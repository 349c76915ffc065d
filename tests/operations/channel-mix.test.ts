import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { CYCLIC_MIX, CYCLIC_MIX_BACK, partialExchange, RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { channelMix } from '../../src/operations/channel-mix.ts'
import { applyOperation } from '../support/apply-operation.ts'
import { openJson } from '../support/open-data.ts'

interface Vector {
  readonly linear: number[]
  readonly swap_linear: number[]
  readonly rot180_linear: number[]
}
const vectors = openJson<Record<string, Vector> & { rot180: number[][] }>('checks/mapping_test_vectors.json')
const names = ['sky_590_neutral_concrete_unswapped', 'foliage_590_unswapped', 'test']

test.skipIf(!vectors).each(names)('%s: exchange and half turn about grey (skipped without open data)', (name) => {
  const { linear, swap_linear, rot180_linear } = vectors![name]
  const halfTurn = vectors!.rot180.flat()
  applyOperation(channelMix, linear, { rows: RED_BLUE_EXCHANGE }).forEach((value, i) =>
    expect(Math.abs(value - swap_linear[i])).toBeLessThan(1e-5),
  )
  applyOperation(channelMix, linear, { rows: halfTurn }).forEach((value, i) =>
    expect(Math.abs(value - rot180_linear[i])).toBeLessThan(1e-5),
  )
})

test('rows that sum to 1 keep grey to the last bit but one', () => {
  for (const rows of [
    RED_BLUE_EXCHANGE,
    CYCLIC_MIX,
    CYCLIC_MIX_BACK,
    partialExchange(0.25),
    [1.5, -1, 0.5, 0.25, 0.5, 0.25, 0, 2, -1],
  ]) {
    applyOperation(channelMix, [0.18, 0.18, 0.18], { rows }).forEach((value) =>
      expect(Math.abs(value - 0.18)).toBeLessThan(1e-16),
    )
  }
})

test('with luminance kept, Y of the result is Y of what came (XYZ of colorjs.io), and greys stay', () => {
  const luminance = (rgb: readonly number[]) =>
    new Color('rec2020-linear', [...rgb] as [number, number, number]).to('xyz-d65').coords[1]!
  for (const rows of [RED_BLUE_EXCHANGE, CYCLIC_MIX, [1.5, -1, 0.5, 0.25, 0.5, 0.25, 0, 2, -1]]) {
    for (const rgb of [
      [1.22, 1, 0.8],
      [0.57, 1, 1.29],
      [0.02, 0.9, 0.1],
    ]) {
      const mixed = applyOperation(channelMix, rgb, { rows, keepLuminance: true })
      expect(Math.abs(luminance(mixed) - luminance(rgb))).toBeLessThan(1e-5)
    }
    applyOperation(channelMix, [0.18, 0.18, 0.18], { rows, keepLuminance: true }).forEach((value) =>
      expect(value).toBeCloseTo(0.18, 14),
    )
  }
})
