// Suggestions on frames painted for the purpose, where the right answer is known by construction.
import { describe, expect, it } from 'vitest'
import { automaticNeutral } from '../../../src/analysis/candidates/automatic-neutral.ts'
import { suggestNeutrals } from '../../../src/analysis/candidates/suggest-neutrals.ts'
import { frameCells } from '../../../src/frame/frame-facts.ts'
import type { CfaColour } from '../../../src/frame/frame.ts'
import { makeOverview } from '../../../src/frame/overview.ts'
import { makeMosaic, randomNumbers } from '../../support/synthetic-sensor.ts'

const noise = { fullScaleElectrons: 20_000, readNoiseElectrons: 3 }
const size = { width: 600, height: 400 }
const foliage = [0.6, 0.3, 0.18]
const sky = [0.12, 0.04, 0.008]
const wall = [0.7, 0.25, 0.1]

type Light = (x: number, y: number, colour: CfaColour) => number

function cellsOf(light: Light) {
  const sensor = makeMosaic({ ...size, light, noise: { ...noise, seed: 3 } })
  return frameCells(sensor, makeOverview(sensor), noise)
}

/** Sky above, leaves below, a wall among them. */
function meadow(): Light {
  const random = randomNumbers(5)
  const leaf = Float32Array.from({ length: (size.width / 8) * (size.height / 8) }, () => 0.4 + 0.7 * random())
  return (x, y, colour) => {
    if (x > 350 && x < 450 && y > 150 && y < 260) return wall[colour]
    if (y < 180) return sky[colour]
    return foliage[colour] * leaf[Math.floor(y / 8) * (size.width / 8) + Math.floor(x / 8)]
  }
}

describe('a wall between leaves and sky', () => {
  const grid = cellsOf(meadow())
  const { neutrals, foliage: leafy, colourLeft } = suggestNeutrals(grid, noise, { filterNm: 590 })

  it('is offered first, at its colour, from a place on it', () => {
    const [first] = neutrals
    expect(first.u).toBeCloseTo(Math.log2(0.7 / 0.25), 1.5)
    expect(first.v).toBeCloseTo(Math.log2(0.1 / 0.25), 1.5)
    expect([first.redStops, first.blueStops]).toEqual([-first.u, -first.v])
    expect(first.place[0] * size.width).toBeGreaterThan(360)
    expect(first.place[0] * size.width).toBeLessThan(440)
    expect(first.place[1] * size.height).toBeGreaterThan(160)
    expect(first.place[1] * size.height).toBeLessThan(250)
    expect(first.area).toBeGreaterThan(0.02)
    expect(first.area).toBeLessThan(0.06)
    expect(first.reason).toMatch(/^bright,.*even/)
  })

  it('offers no colour twice', () => {
    expect(neutrals.length).toBeGreaterThan(1)
    for (const [i, a] of neutrals.entries()) {
      for (const b of neutrals.slice(0, i)) expect(Math.hypot(a.u - b.u, a.v - b.v)).toBeGreaterThan(0.059)
    }
  })

  it('leaves the leaves as an offer of their own, named only where colour tells them', () => {
    expect(leafy!.u).toBeCloseTo(1, 1)
    expect(leafy!.place[1]).toBeGreaterThan(180 / size.height)
    expect(leafy!.reason).toBe('foliage')
    expect(suggestNeutrals(grid, noise, { filterNm: 720 }).foliage!.reason).toBe('lowest red to blue, textured')
  })

  it('keeps colour, and survives the way to a worker and back', () => {
    expect(colourLeft).toBe(true)
    expect(structuredClone(neutrals)).toEqual(neutrals)
    expect(suggestNeutrals(structuredClone(grid), noise, { filterNm: 590 }).neutrals).toEqual(neutrals)
  })

  it('a grey remembered from other frames brings its colour up', () => {
    const leaves = [Math.log2(0.6 / 0.3), Math.log2(0.18 / 0.3)] as const
    const place = (list: typeof neutrals) =>
      list.findIndex(({ u, v }) => Math.hypot(u - leaves[0], v - leaves[1]) < 0.03)
    expect(place(neutrals)).toBeGreaterThan(0)
    expect(place(suggestNeutrals(grid, noise, { filterNm: 590, remembered: leaves }).neutrals)).toBe(0)
  })
})

describe('frames without an answer', () => {
  it('black and white frames offer nothing', () => {
    for (const level of [0, 1]) {
      const nothing = suggestNeutrals(
        cellsOf(() => level),
        noise,
      )
      expect(nothing).toEqual({ neutrals: [], foliage: null, colourLeft: false })
    }
  })

  it('one colour everywhere has no colour left', () => {
    const { neutrals, foliage, colourLeft } = suggestNeutrals(
      cellsOf((x, _y, c) => wall[c] * (0.3 + x / 1000)),
      noise,
    )
    expect(colourLeft).toBe(false)
    expect(foliage).toBeNull()
    expect(neutrals[0].u).toBeCloseTo(Math.log2(0.7 / 0.25), 1.5)
  })
})

describe('automatic neutrals', () => {
  // Two halves a and b: means by arithmetic, here on paper.
  const grid = cellsOf((x, _y, c) => (x < 300 ? wall : foliage)[c])
  const log = (r: number, g: number) => Math.log2(r / g)
  it('grey world averages light, the plain mean averages stops, shades of grey leans to the bright', () => {
    expect(automaticNeutral(grid, 'grey world')![0]).toBeCloseTo(log(0.65, 0.275), 1.5)
    expect(automaticNeutral(grid, 'plain mean')![0]).toBeCloseTo((log(0.7, 0.25) + log(0.6, 0.3)) / 2, 1.5)
    const sixth = (a: number, b: number) => ((a ** 6 + b ** 6) / 2) ** (1 / 6)
    expect(automaticNeutral(grid, 'shades of grey')![0]).toBeCloseTo(log(sixth(0.7, 0.6), sixth(0.25, 0.3)), 1.5)
  })
  it('is null without a usable cell', () => {
    expect(
      automaticNeutral(
        cellsOf(() => 1),
        'grey world',
      ),
    ).toBeNull()
    expect(
      automaticNeutral(
        cellsOf(() => 1),
        'plain mean',
      ),
    ).toBeNull()
  })
})
