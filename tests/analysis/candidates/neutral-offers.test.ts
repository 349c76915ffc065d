// What a frame offers in all, on a frame of three flat parts whose colours and averages are known by construction.
import { describe, expect, it } from 'vitest'

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

it('puts likely places first, then foliage and the remembered grey; each has gains and words', () => {
  const { offers, averages, colourLeft } = offerNeutrals(thirds, noise, { filterNm: 590, remembered: [1.2, -1] })
  expect(colourLeft).toBe(true)
  expect(new Set(offers.map(({ id }) => id)).size).toBe(offers.length)
  const ids = offers.map(({ id }) => id)
  expect(ids.slice(0, 2)).toEqual(['place 0', 'place 1'])
  expect(ids.indexOf('foliage')).toBeLessThan(ids.indexOf('remembered'))
  expect(offers.find(({ id }) => id === 'remembered')).toMatchObject({
    gains: { redStops: -1.2, blueStops: 1 },
    place: null,
    isGrey: false,
  })
  for (const { reason } of [...offers, ...averages]) expect(reason).not.toBe('')
})

it('averages are those of the parts by hand', () => {
  const { averages } = offerNeutrals(thirds, noise, { filterNm: 590 })
  const gainsOf = (id: string) => averages.find((average) => average.id === id)!.gains
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

const grey = gridOf((_x, _y, colour) => [0.4, 0.4, 0.39][colour])

it.each([
  ['three parts', thirds],
  ['one colour', grey],
])('all averages remain in a frame of %s, by name', (_, grid) => {
  for (const filterNm of [590, 720, 850]) {
    const { averages } = offerNeutrals(grid, noise, { filterNm })
    expect(averages.map(({ id }) => id)).toEqual(['plain mean', 'grey world', 'shades of grey'])
    for (const { id, reason } of averages) expect(reason).toContain(id)
  }
})

it('a frame without a usable cell has no averages', () => {
  const clipped = gridOf(() => 2)
  expect(offerNeutrals(clipped, noise, { filterNm: 590 }).averages).toEqual([])
})

describe('what is practically offered already', () => {
  const wallRatios = [Math.log2(wall[0] / wall[1]), Math.log2(wall[2] / wall[1])] as const
  const leafRatios = [Math.log2(leaf[0] / leaf[1]), Math.log2(leaf[2] / leaf[1])] as const

  it('is left out: a frame of one colour offers that once', () => {
    const { offers, colourLeft } = offerNeutrals(grey, noise, { filterNm: 850 })
    expect(colourLeft).toBe(false)
    expect(offers).toHaveLength(1)
    expect(offers[0].gains.redStops).toBeCloseTo(0, 1.5)
    expect(offers[0].gains.blueStops).toBeCloseTo(Math.log2(0.4 / 0.39), 1.5)
  })

  it.each([590, 720])('at %i nm no two offers are practically the same, whatever is remembered', (filterNm) => {
    for (const remembered of [undefined, wallRatios, leafRatios, [1.2, -1] as const]) {
      const { offers } = offerNeutrals(thirds, noise, { filterNm, remembered })
      for (const [i, { gains: a }] of offers.entries()) {
        for (const { gains: b } of offers.slice(0, i))
          expect(Math.hypot(a.redStops - b.redStops, a.blueStops - b.blueStops)).toBeGreaterThan(0.059)
      }
    }
  })

  it('a remembered grey lends its words to the place of its colour', () => {
    const { offers } = offerNeutrals(thirds, noise, { filterNm: 590, remembered: wallRatios })
    expect(offers.map(({ id }) => id)).not.toContain('remembered')
    const named = offers.filter(({ reason }) => reason.startsWith('your last grey'))
    expect(named).toHaveLength(1)
    expect(named[0]).toMatchObject({ isGrey: true })
    expect(named[0].place).not.toBeNull()
    expect(named[0].gains.redStops).toBeCloseTo(-wallRatios[0], 1.5)
    expect(named[0].reason.split(', ').length).toBeLessThanOrEqual(3)
  })
})
