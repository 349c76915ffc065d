// The overview against plain means over whole cells, worked out here photosite by photosite; that of a Bayer mosaic by what
// it promises: one centre for all colours, the mean kept, clipping known wherever it reaches.
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

/** The largest photosite of an overview pixel and of the photosites that border on it. */
function largestAround(mosaic: MosaicData, scale: number, x: number, y: number): number {
  let largest = -Infinity
  for (let row = y * scale - 1; row <= (y + 1) * scale; row++) {
    for (let column = x * scale - 1; column <= (x + 1) * scale; column++) {
      const black = uneven.codes[(row % 2) * 2 + (column % 2)]
      const value = (mosaic.codes[row * mosaic.width + column] - black) / (mosaic.white - black)
      largest = Math.max(largest, value)
    }
  }
  return largest
}

describe('overview of a mosaic', () => {
  it.each([
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
    // The cell above reaches for it too.
    expect([3, 7, 11, 15].map((i) => makeOverview(spark).rgba[i])).toEqual([
      expect.closeTo(0.1, 4),
      1,
      expect.closeTo(0.1, 4),
      1,
    ])
  })
})

const phases: readonly Cfa[] = [
  bayer,
  { ...bayer, colours: [1, 0, 2, 1] },
  { ...bayer, colours: [1, 2, 0, 1] },
  { ...bayer, colours: [2, 1, 1, 0] },
]
const sizes = [
  { width: 40, height: 30, scale: 2 },
  { width: 41, height: 31, scale: 2 },
  { width: 5003, height: 3001, scale: 4 },
]
const strength = [0.7, 1, 0.3]
/** Up and down evenly, one slope in so many photosites. */
const slopeLength = 32
const slopes = (v: number) => Math.abs(((v / slopeLength) % 2) - 1)
const hasBend = (pixel: number, scale: number) =>
  Math.floor((pixel * scale - 2) / slopeLength) !== Math.floor(((pixel + 1) * scale + 2) / slopeLength)

describe('overview of a Bayer mosaic', () => {
  it.each(sizes.flatMap((size, i) => (i < 2 ? phases : phases.slice(1, 2)).map((cfa) => ({ ...size, cfa }))))(
    'has one centre for all colours: $width × $height, $cfa.colours',
    ({ width, height, cfa, scale }) => {
      const level = (x: number, y: number) => 0.1 + 0.4 * slopes(x) + 0.4 * slopes(y)
      const light = (x: number, y: number, colour: number) => strength[colour] * level(x, y)
      const overview = makeOverview(makeMosaic({ width, height, cfa, black: uneven, white: 65535, light }))
      expect(overview.scale).toBe(scale)
      const random = randomNumbers(2)
      for (let n = 0; n < 400; n++) {
        // Without the outermost pixels, where cells are repeated.
        const x = 1 + Math.floor(random() * (overview.width - 3))
        const y = 1 + Math.floor(random() * (overview.height - 3))
        if (hasBend(x, scale) || hasBend(y, scale)) continue
        for (let channel = 0; channel < 3; channel++) {
          const centre = level((x + 0.5) * scale - 0.5, (y + 0.5) * scale - 0.5)
          const found = overview.rgba[(y * overview.width + x) * 4 + channel]
          expect(found, `(${x}, ${y}) channel ${channel}`).toBeCloseTo(strength[channel] * centre, 3)
        }
      }
    },
  )

  it.each(sizes)('keeps the mean and knows every clipped photosite: $width × $height', ({ width, height, scale }) => {
    const random = randomNumbers(7)
    const inside = (v: number, length: number) => v > 8 && v < length - 8
    const mosaic = makeMosaic({
      width,
      height,
      black: uneven,
      light: (x, y) => (inside(x, width) && inside(y, height) ? random() * 1.01 - 0.01 : 0.4),
    })
    const { rgba, width: across } = makeOverview(mosaic)
    const [columns, rows] = [Math.floor(width / scale), Math.floor(height / scale)]
    const found = [0, 0, 0]
    const wanted = [0, 0, 0]
    for (let y = 0; y < rows; y++) {
      for (let x = 0; x < columns; x++) {
        const means = naive(mosaic, 2, scale, x, y)
        for (let c = 0; c < 3; c++) {
          found[c] += rgba[(y * across + x) * 4 + c] / (columns * rows)
          wanted[c] += means[c] / (columns * rows)
        }
      }
    }
    for (let c = 0; c < 3; c++) expect(found[c]).toBeCloseTo(wanted[c], 5)
    for (let n = 0; n < 300; n++) {
      const x = 1 + Math.floor(random() * (columns - 2))
      const y = 1 + Math.floor(random() * (rows - 2))
      expect(rgba[(y * across + x) * 4 + 3], `(${x}, ${y})`).toBeCloseTo(largestAround(mosaic, scale, x, y), 5)
    }
  })

  it('shows edges of grey things with less than half the false colour of plain cells', () => {
    const [width, height] = [400, 200]
    // A slanted edge through a lens of .6 pixels' deviation.
    const light = (x: number, y: number) => 0.05 + 0.7 / (1 + Math.exp((-1.7 * (x - 150 - 0.31 * y)) / 0.6))
    const mosaic = makeMosaic({ width, height, white: 65535, light })
    const { rgba, width: across } = makeOverview(mosaic)
    let ours = 0
    let plain = 0
    for (let y = 2; y < height / 2 - 2; y++) {
      for (let x = 2; x < width / 2 - 2; x++) {
        const i = (y * across + x) * 4
        const cell = naive(mosaic, 2, 2, x, y)
        ours += (rgba[i] - rgba[i + 2]) ** 2
        plain += (cell[0] - cell[2]) ** 2
      }
    }
    expect(Math.sqrt(ours / plain)).toBeLessThan(0.5)
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
