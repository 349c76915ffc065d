import { expect, test } from 'vitest'
import { secondLight, shadePlane } from '../../src/operations/second-light.ts'
import type { Table } from '../../src/operations/define.ts'
import { neutral } from '../../src/operations/neutral.ts'
import { applyOperation } from '../support/apply-operation.ts'

const everywhere = (share: number) => {
  const plane: Table = { kind: 'plane', width: 1, height: 1, data: Float32Array.of(share) }
  return { [shadePlane('step-1')]: plane }
}
const stops = ([r, g, b]: readonly number[]) => [Math.log2(r / g), Math.log2(b / g)]

// Computed from the spectra of sensor A behind 590 nm: flat grey lies at (1.91, −1.04) in sun and at (2.17, −1.42) in shade;
// half of the mask lies halfway in stops, (2.04, −1.23).
const sunGrey = [2 ** 1.91, 1, 2 ** -1.04].map((level) => level * 0.1)
const shadeGrey = [2 ** 2.17, 1, 2 ** -1.42].map((level) => level * 0.01)
const halfGrey = [2 ** 2.04, 1, 2 ** -1.23].map((level) => level * 0.05)
const difference = { redStops: -0.26, blueStops: 0.38 }

test.each([
  ['sun', sunGrey, 0],
  ['shade', shadeGrey, 1],
  ['half', halfGrey, 0.5],
] as const)('flat grey in %s becomes neutral under its own share of the second light', (_name, camera, share) => {
  const balanced = applyOperation(neutral, camera, { redStops: -1.91, blueStops: 1.04 })
  const [u, v] = stops(applyOperation(secondLight, balanced, difference, { supplies: everywhere(share) }))
  expect(Math.hypot(u, v)).toBeLessThan(1e-9)
})

test('a clipped pixel that the neutral made grey stays grey in shade', () => {
  const rgb = applyOperation(secondLight, [0.8, 0.8, 0.8], difference, { supplies: everywhere(1), peak: 1 })
  expect(rgb).toEqual([0.8, 0.8, 0.8])
})

test('without its plane nothing lies in shade', () => {
  expect(applyOperation(secondLight, [0.3, 0.2, 0.1], difference)).toEqual([0.3, 0.2, 0.1])
})
