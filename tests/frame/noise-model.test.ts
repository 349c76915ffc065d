// The noise model found in mosaics whose noise is known.
import { expect, it } from 'vitest'
import { estimateNoise, usualNoise } from '../../src/frame/noise-model.ts'
import { makeMosaic, randomNumbers, sixBySix } from '../support/synthetic-sensor.ts'

const ramp = (x: number) => 0.9 * 2 ** (-x / 150)

it.each([
  { name: 'clean sensor', full: 50000, read: 3, cfa: undefined },
  { name: 'high ISO speed', full: 3000, read: 4, cfa: undefined },
  { name: '6×6', full: 20000, read: 3, cfa: sixBySix },
])('is found within 20 % on a ramp: $name', ({ full, read, cfa }) => {
  const noise = { fullScaleElectrons: full, readNoiseElectrons: read, seed: 11 }
  const model = estimateNoise(makeMosaic({ width: 1200, height: 1200, cfa, light: ramp, noise }))
  expect(model.fullScaleElectrons / full).toBeGreaterThan(0.8)
  expect(model.fullScaleElectrons / full).toBeLessThan(1.2)
})

it('is not carried away where three quarters of the frame are textured', () => {
  const random = randomNumbers(4)
  const light = (x: number, y: number) => ramp(x) * (((x >> 5) * 7 + (y >> 5) * 3) % 4 ? 0.8 + 0.4 * random() : 1)
  const noise = { fullScaleElectrons: 20000, readNoiseElectrons: 3, seed: 12 }
  const model = estimateNoise(makeMosaic({ width: 1600, height: 1600, light, noise }))
  expect(model.fullScaleElectrons / 20000).toBeGreaterThan(0.4)
  expect(model.fullScaleElectrons / 20000).toBeLessThan(1.3)
})

it('falls back on the ISO speed where the frame cannot tell', () => {
  const flat = makeMosaic({ width: 60, height: 40, light: () => 0.3 })
  expect(estimateNoise(flat, 800)).toEqual(usualNoise(800))
  expect(usualNoise(800)).toEqual({ fullScaleElectrons: 6250, readNoiseElectrons: 3 })
})
