// What a frame offers in all, on a frame of three flat parts whose colours and averages are known by construction.
import { expect, it } from 'vitest'

import { offerNeutrals } from '../../../src/analysis/candidates/neutral-offers.ts'
import { frameCells } from '../../../src/frame/frame-facts.ts'
import type { CfaColour } from '../../../src/frame/frame.ts'
import { makeOverview } from '../../../src/frame/overview.ts'
import { makeMosaic } from '../../support/synthetic-sensor.ts'

const noise = { fullScaleElectrons: 20_000, readNoiseElectrons: 3 }
const size = { width: 600, height: 400 }
const [sky, wall, leaf] = [
  [0.12, 0.04, 0.008],
  [0.7, 0.25, 0.1],
  [0.6, 0.3, 0.18],
]

function gridOf(light: (x: number, y: number, colour: CfaColour) => number) {
  const sensor = makeMosaic({ ...size, light, noise: { ...noise, seed: 3 } })
  return frameCells(sensor, makeOverview(sensor), noise)
}
/** Thirds one below the other; leaves flicker, so that they have texture. */
const thirds = gridOf((x, y, colour) => {
  const part = y < 133 ? sky : y < 267 ? wall : leaf
  return part[colour] * (part === leaf && (x >> 3) % 2 ? 0.6 : 1)
})

it('puts likely places first, then foliage and the remembered grey, averages last; each has gains and words', () => {
  const { offers, colourLeft } = offerNeutrals(thirds, noise, { filterNm: 590, remembered: [1.2, -1] })
  expect(colourLeft).toBe(true)
  expect(new Set(offers.map(({ id }) => id)).size).toBe(offers.length)
  const ids = offers.map(({ id }) => id)
  expect(ids.slice(0, 2)).toEqual(['place 0', 'place 1'])
  expect(ids.indexOf('foliage')).toBeLessThan(ids.indexOf('remembered'))
  expect(ids.slice(-3)).toEqual(['plain mean', 'grey world', 'shades of grey'])
  expect(offers.find(({ id }) => id === 'remembered')).toMatchObject({
    gains: { redStops: -1.2, blueStops: 1 },
    place: null,
    isGrey: false,
  })
  for (const { reason } of offers) expect(reason).not.toBe('')
})

it('averages are those of the parts by hand', () => {
  const { offers } = offerNeutrals(thirds, noise, { filterNm: 590 })
  const gainsOf = (id: string) => offers.find((offer) => offer.id === id)!.gains
  const meanOf = (values: number[]) => values.reduce((sum, value) => sum + value / values.length, 0)
  const light = (c: number) => meanOf([sky[c], wall[c], leaf[c] * 0.8])
  expect(gainsOf('grey world').redStops).toBeCloseTo(Math.log2(light(1) / light(0)), 1.5)
  expect(gainsOf('grey world').blueStops).toBeCloseTo(Math.log2(light(1) / light(2)), 1.5)
  expect(gainsOf('plain mean').redStops).toBeCloseTo(meanOf([sky, wall, leaf].map(([r, g]) => Math.log2(g / r))), 1.5)
})

it('from 695 nm on names no foliage', () => {
  const reasons = (filterNm: number) => offerNeutrals(thirds, noise, { filterNm }).offers.map(({ reason }) => reason)
  expect(reasons(590).join()).toMatch(/foliage/)
  expect(reasons(695).join()).not.toMatch(/foliage/)
  expect(reasons(695)).toContain('lowest red to blue, textured')
})

it('a frame of one colour says that none is left, and still offers averages', () => {
  const grey = gridOf((_x, _y, colour) => [0.4, 0.4, 0.39][colour])
  const { offers, colourLeft } = offerNeutrals(grey, noise, { filterNm: 850 })
  expect(colourLeft).toBe(false)
  expect(offers.at(-1)?.id).toBe('shades of grey')
})
