// The overview against plain means over whole cells, worked out here photosite by photosite.
import { describe, expect, it } from 'vitest'
import type { Cfa, MosaicData } from '../../src/frame/frame.ts'
import { makeOverview } from '../../src/frame/overview.ts'
import { bayer, makeLinear, makeMosaic, oneChannel, randomNumbers, sixBySix } from '../support/synthetic-sensor.ts'

const uneven = { columns: 2, rows: 2, codes: [512, 500, 530, 520] }

function noisy(width: number, height: number, cfa: Cfa): MosaicData {
  const random = randomNumbers(7)
  return makeMosaic({ width, height, cfa, black: uneven, light: () => random() * 1.1 - 0.01 })
}

/** Means of the whole cells (side `cell`) of the area of overview pixel (x, y), and its largest photosite. */
function naive(mosaic: MosaicData, cell: number, scale: number, x: number, y: number): number[] {
  const sums = [0, 0, 0]
  const counts = [0, 0, 0]
  let largest = -Infinity
  const end = (from: number, length: number) => Math.min(from + scale, Math.floor(length / cell) * cell)
  for (let row = y * scale; row < end(y * scale, mosaic.height); row++) {
    for (let column = x * scale; column < end(x * scale, mosaic.width); column++) {
      const colour = mosaic.cfa.colours[(row % mosaic.cfa.rows) * mosaic.cfa.columns + (column % mosaic.cfa.columns)]
      const black = uneven.codes[(row % 2) * 2 + (column % 2)]
      const value = (mosaic.codes[row * mosaic.width + column] - black) / (mosaic.white - black)
      sums[colour] += value
      counts[colour]++
      largest = Math.max(largest, value)
    }
  }
  const means = sums.map((sum, colour) => (counts[colour] ? sum / counts[colour] : sums[1] / counts[1]))
  return [...means, largest]
}

describe('overview of a mosaic', () => {
  it.each([
    { name: 'Bayer, one cell a pixel', width: 40, height: 30, cfa: bayer, cell: 2, scale: 2 },
    { name: 'Bayer, odd size', width: 41, height: 31, cfa: bayer, cell: 2, scale: 2 },
    { name: 'Bayer, several cells a pixel, odd size', width: 5003, height: 3001, cfa: bayer, cell: 2, scale: 4 },
    { name: '6×6', width: 40, height: 31, cfa: sixBySix, cell: 3, scale: 3 },
    { name: 'one channel', width: 21, height: 10, cfa: oneChannel, cell: 1, scale: 1 },
  ])('$name', ({ width, height, cfa, cell, scale }) => {
    const mosaic = noisy(width, height, cfa)
    const overview = makeOverview(mosaic)
    expect(overview.scale).toBe(scale)
    expect([overview.width, overview.height]).toEqual([Math.ceil(width / scale), Math.ceil(height / scale)])
    const random = randomNumbers(1)
    for (let n = 0; n < 400; n++) {
      const x = n === 0 ? overview.width - 1 : Math.floor(random() * overview.width)
      const y = n === 1 ? overview.height - 1 : Math.floor(random() * overview.height)
      // A remnant below one cell repeats its neighbour.
      const from = (place: number, length: number) =>
        Math.min(place, Math.ceil((Math.floor(length / cell) * cell) / scale) - 1)
      const wanted = naive(mosaic, cell, scale, from(x, width), from(y, height))
      const at = (y * overview.width + x) * 4
      for (let channel = 0; channel < 4; channel++) {
        expect(overview.rgba[at + channel], `(${x}, ${y}) channel ${channel}`).toBeCloseTo(wanted[channel], 5)
      }
    }
  })

  it('keeps noise below black and marks a single clipped photosite', () => {
    const dark = makeMosaic({ width: 4, height: 4, light: () => -0.01 })
    expect(Math.max(...makeOverview(dark).rgba)).toBeLessThan(0)
    const spark = makeMosaic({ width: 4, height: 4, light: (x, y) => (x === 3 && y === 2 ? 1 : 0.1) })
    expect([3, 7, 11, 15].map((i) => makeOverview(spark).rgba[i])).toEqual([
      expect.closeTo(0.1, 4),
      expect.closeTo(0.1, 4),
      expect.closeTo(0.1, 4),
      1,
    ])
  })
})

it('overview of three-channel data averages every channel', () => {
  const linear = makeLinear(
    { width: 9, height: 5, light: (x, _, colour) => (colour + 1) / 10 + x / 100 },
    [100, 200, 300],
  )
  const { width, height, rgba, scale } = makeOverview(linear)
  expect([width, height, scale]).toEqual([9, 5, 1])
  expect(Array.from(rgba.slice(8, 12))).toEqual([0.12, 0.22, 0.32, 0.32].map((value) => expect.closeTo(value, 4)))
})
