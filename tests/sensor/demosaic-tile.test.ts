// Demosaicing: Bayer kernels against the published ones, ramps that any linear method must keep, tiles that meet.
import { describe, expect, it } from 'vitest'
import type { CfaColour, MosaicData, SensorData } from '../../src/frame/frame.ts'
import { demosaicTile } from '../../src/sensor/demosaic-tile.ts'
import {
  bayer,
  evenBlack,
  makeLinear,
  makeMosaic,
  oneChannel,
  randomNumbers,
  sixBySix,
} from '../support/synthetic-sensor.ts'

const ones = [1, 1, 1] as const
const phases = [
  { name: 'RGGB', cfa: bayer },
  { name: 'BGGR', cfa: { ...bayer, colours: [2, 1, 1, 0] as const } },
  { name: 'GRBG', cfa: { ...bayer, colours: [1, 0, 2, 1] as const } },
  { name: 'GBRG', cfa: { ...bayer, colours: [1, 2, 0, 1] as const } },
]
const arrays = [...phases, { name: '6×6', cfa: sixBySix }]
const size = { width: 36, height: 30 }
const whole = { x: 0, y: 0, ...size }

/** Pixel (x, y) of a whole demosaiced frame. */
const pixel = (rgba: Float32Array, x: number, y: number) =>
  Array.from(rgba.subarray((y * size.width + x) * 4, (y * size.width + x) * 4 + 4))

describe('Bayer kernels', () => {
  // Malvar, He & Cutler, ICASSP 2004, figure 2, in eighths; each is read off as the response to single photosites.
  const published: Record<string, number[][]> = {
    'green at red': [
      [0, 0, -1, 0, 0],
      [0, 0, 2, 0, 0],
      [-1, 2, 4, 2, -1],
      [0, 0, 2, 0, 0],
      [0, 0, -1, 0, 0],
    ],
    'red at green in a red row': [
      [0, 0, 0.5, 0, 0],
      [0, -1, 0, -1, 0],
      [-1, 4, 5, 4, -1],
      [0, -1, 0, -1, 0],
      [0, 0, 0.5, 0, 0],
    ],
    'red at green in a blue row': [
      [0, 0, -1, 0, 0],
      [0, -1, 4, -1, 0],
      [0.5, 0, 5, 0, 0.5],
      [0, -1, 4, -1, 0],
      [0, 0, -1, 0, 0],
    ],
    'red at blue': [
      [0, 0, -1.5, 0, 0],
      [0, 2, 0, 2, 0],
      [-1.5, 0, 6, 0, -1.5],
      [0, 2, 0, 2, 0],
      [0, 0, -1.5, 0, 0],
    ],
  }
  it.each([
    { kernel: 'green at red', x: 10, y: 10, channel: 1 },
    { kernel: 'green at red', x: 11, y: 11, channel: 1 },
    { kernel: 'red at green in a red row', x: 11, y: 10, channel: 0 },
    { kernel: 'red at green in a red row', x: 10, y: 11, channel: 2 },
    { kernel: 'red at green in a blue row', x: 10, y: 11, channel: 0 },
    { kernel: 'red at green in a blue row', x: 11, y: 10, channel: 2 },
    { kernel: 'red at blue', x: 11, y: 11, channel: 0 },
    { kernel: 'red at blue', x: 10, y: 10, channel: 2 },
  ])('$kernel, channel $channel at ($x, $y)', ({ kernel, x, y, channel }) => {
    published[kernel].forEach((row, j) =>
      row.forEach((weight, i) => {
        const spark = makeMosaic({
          ...size,
          black: evenBlack(0),
          light: (p, q) => (p === x + i - 2 && q === y + j - 2 ? 1 : 0),
        })
        expect(pixel(demosaicTile(spark, whole, ones), x, y)[channel]).toBeCloseTo(weight / 8, 6)
      }),
    )
  })
})

describe.each(arrays)('$name', ({ cfa }) => {
  const uneven = { columns: 2, rows: 2, codes: [512, 500, 530, 520] }
  const make = (light: (x: number, y: number, colour: CfaColour) => number, white?: number): MosaicData =>
    makeMosaic({ ...size, cfa, light, black: uneven, white })

  it('keeps constants exactly, each channel its own, up to the border, with gains that make it grey', () => {
    const colour = [0.5, 0.133, 0.0645]
    const rgba = demosaicTile(
      make((_x, _y, c) => colour[c], 60000),
      whole,
      [0.133 / 0.5, 1, 0.133 / 0.0645],
    )
    for (let i = 0; i < rgba.length; i++) expect(rgba[i]).toBeCloseTo(i % 4 === 3 ? colour[0] : colour[i % 4], 4)
  })

  it('keeps linear ramps inside', () => {
    const ramp = (x: number, y: number) => 0.1 + 0.012 * x + 0.007 * y
    const rgba = demosaicTile(make(ramp, 60000), whole, ones)
    for (let y = 6; y < size.height - 6; y++) {
      for (let x = 6; x < size.width - 6; x++) {
        for (const value of pixel(rgba, x, y).slice(0, 3)) expect(value).toBeCloseTo(ramp(x, y), 4)
        expect(pixel(rgba, x, y)[3]).toBeCloseTo(ramp(x + 1, y + 1), 4)
      }
    }
  })

  it('gives every pixel its own photosite untouched', () => {
    const random = randomNumbers(5)
    const mosaic = make(() => random())
    const rgba = demosaicTile(mosaic, whole, [0.4, 1, 3])
    for (let y = 0; y < size.height; y++) {
      for (let x = 0; x < size.width; x++) {
        const colour = cfa.colours[(y % cfa.rows) * cfa.columns + (x % cfa.columns)]
        const black = uneven.codes[(y % 2) * 2 + (x % 2)]
        const value = (mosaic.codes[y * size.width + x] - black) / (mosaic.white - black)
        expect(pixel(rgba, x, y)[colour]).toBeCloseTo(value, 6)
      }
    }
  })

  it('meets without seams, whatever the tiles', () => {
    const random = randomNumbers(6)
    const mosaic = make(() => random())
    const gains = [0.4, 1, 3] as const
    const rgba = demosaicTile(mosaic, whole, gains)
    for (const [x, y, width, height] of [
      [0, 0, 7, 5],
      [7, 0, 29, 5],
      [0, 5, 1, 25],
      [1, 5, 17, 25],
      [18, 5, 18, 25],
    ]) {
      const tile = demosaicTile(mosaic, { x, y, width, height }, gains)
      for (let row = 0; row < height; row++) {
        const from = ((y + row) * size.width + x) * 4
        expect(tile.subarray(row * width * 4, (row + 1) * width * 4)).toEqual(rgba.subarray(from, from + width * 4))
      }
    }
  })
})

it('the peak is the largest photosite of the neighbourhood, before gains', () => {
  const spark = makeMosaic({ ...size, light: (x, y) => (x === 12 && y === 9 ? 1 : 0.1) })
  const rgba = demosaicTile(spark, whole, [5, 1, 5])
  for (let y = 0; y < size.height; y++) {
    for (let x = 0; x < size.width; x++) {
      const near = Math.abs(x - 12) <= 1 && Math.abs(y - 9) <= 1
      expect(pixel(rgba, x, y)[3]).toBeCloseTo(near ? 1 : 0.1, 4)
    }
  }
})

it.each<{ name: string; sensor: SensorData; colour: number[] }>([
  { name: 'one channel', sensor: makeMosaic({ ...size, cfa: oneChannel, light: (x) => x / 40 }), colour: [1, 1, 1] },
  {
    name: 'three channels',
    sensor: makeLinear({ ...size, light: (x, _, c) => (x / 40) * [1, 0.5, 0.2][c] }, [5, 6, 7]),
    colour: [1, 0.5, 0.2],
  },
])('$name is read as it is', ({ sensor, colour }) => {
  const rgba = demosaicTile(sensor, { x: 3, y: 2, width: 5, height: 4 }, [3, 1, 2])
  for (let x = 0; x < 5; x++) {
    const level = (x + 3) / 40
    for (let c = 0; c < 3; c++) expect(rgba[(3 * 5 + x) * 4 + c]).toBeCloseTo(level * colour[c], 3)
    expect(rgba[(3 * 5 + x) * 4 + 3]).toBeCloseTo(level, 3)
  }
})

it('refuses an area outside the frame', () => {
  const mosaic = makeMosaic({ ...size, light: () => 0 })
  expect(() => demosaicTile(mosaic, { x: 30, y: 0, width: 7, height: 2 }, ones)).toThrow('within the frame')
})
