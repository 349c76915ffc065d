// Synthetic DNG files of known light through the whole decoder: every photosite comes out upright, at its place, with its
// colour and its own black, whatever the file's borders, pattern and orientation.
import { beforeAll, describe, expect, it } from 'vitest'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import type { LibRaw } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import type { Cfa, CfaColour, Frame, LevelTable, MosaicData } from '../../src/frame/frame.ts'
import { packLosslessJpeg } from '../support/lossless-jpeg.ts'
import { type SyntheticDng, writeDng } from '../support/synthetic-dng.ts'
import { bayer, oneChannel, sixBySix } from '../support/synthetic-sensor.ts'

let libraw: LibRaw
beforeAll(async () => {
  libraw = await startLibRawInNode()
})
const decode = (dng: SyntheticDng): Promise<Frame> =>
  decodeFrame(libraw, { fileName: 'pond.dng', bytes: writeDng(dng) })

const [width, height] = [61, 50]
const white = 15000
const uneven: LevelTable = { columns: 2, rows: 2, codes: [512, 400, 620, 505] }
const tint = [0.8, 0.5, 0.3]
/** Light at a place of the picture, different everywhere. */
const light = (x: number, y: number, colour: CfaColour) => tint[colour] * (0.1 + 0.9 * (((x * 7 + y * 13) % 97) / 97))

interface Stored {
  readonly cfa?: Cfa
  readonly black?: LevelTable
  /** Masked columns and rows before the active area, and rows and columns cropped from it at all sides. */
  readonly border?: readonly [left: number, top: number]
  readonly margin?: number
  readonly orientation?: number
}

/** A file whose picture shows `light`: places count from the picture's corner, patterns from the active area's. */
function makeDng({ cfa = bayer, black = uneven, border = [0, 0], margin = 0, orientation }: Stored): SyntheticDng {
  const [left, top] = border
  const [storedWidth, storedHeight] = [left + width + 2 * margin, top + height + 2 * margin]
  const codes = new Uint16Array(storedWidth * storedHeight).fill(7)
  for (let y = 0; y < height + 2 * margin; y++) {
    for (let x = 0; x < width + 2 * margin; x++) {
      const colour = cfa.colours[(y % cfa.rows) * cfa.columns + (x % cfa.columns)]
      const zero = black.codes[(y % black.rows) * black.columns + (x % black.columns)]
      codes[(top + y) * storedWidth + left + x] = Math.round(
        zero + light(x - margin, y - margin, colour) * (white - zero),
      )
    }
  }
  return {
    width: storedWidth,
    height: storedHeight,
    codes,
    cfa: cfa.columns === 1 ? undefined : cfa,
    black,
    white,
    orientation,
    ...(left || top ? { activeArea: [top, left, storedHeight, storedWidth] as const } : {}),
    ...(margin ? { crop: [margin, margin, width, height] as const } : {}),
  }
}

/** Where TIFF 6.0 puts the stored place (x, y) of the picture in the upright one. */
const upright = [
  (x: number, y: number) => [x, y],
  (x: number, y: number) => [width - 1 - x, y],
  (x: number, y: number) => [width - 1 - x, height - 1 - y],
  (x: number, y: number) => [x, height - 1 - y],
  (x: number, y: number) => [y, x],
  (x: number, y: number) => [height - 1 - y, x],
  (x: number, y: number) => [height - 1 - y, width - 1 - x],
  (x: number, y: number) => [y, width - 1 - x],
]

/** Largest difference between the normalised photosites of a frame and the light they saw. */
function worstDifference({ sensor }: Frame, orientation = 1): number {
  const { codes, cfa, black } = sensor as MosaicData
  const sides = orientation > 4 ? [height, width] : [width, height]
  expect([sensor.width, sensor.height]).toEqual(sides)
  let worst = 0
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const [column, row] = upright[orientation - 1](x, y)
      const entry = <T>(values: readonly T[], { columns, rows }: { columns: number; rows: number }) =>
        values[(row % rows) * columns + (column % columns)]
      const zero = entry(black.codes, black)
      const value = (codes[row * sensor.width + column] - zero) / (sensor.white - zero)
      worst = Math.max(worst, Math.abs(value - light(x, y, entry(cfa.colours, cfa))))
    }
  }
  return worst
}
/** Half a code: what rounding costs. */
const rounding = 0.51 / (white - 620)

const phases = ['0112', '2110', '1021', '1201'].map((phase) => [...phase].map(Number) as CfaColour[])

describe('levels and colours of every photosite', () => {
  it.each(phases.map((colours) => ({ colours })))('Bayer phase $colours', async ({ colours }) => {
    expect(worstDifference(await decode(makeDng({ cfa: { ...bayer, colours } })))).toBeLessThan(rounding)
  })

  it.each<{ name: string; stored: Stored }>([
    { name: 'even borders', stored: { border: [8, 6] } },
    { name: 'odd borders', stored: { border: [5, 3] } },
    { name: 'odd borders and crop', stored: { border: [5, 4], margin: 3 } },
    { name: 'even black', stored: { black: { columns: 1, rows: 1, codes: [300] } } },
    { name: 'one channel', stored: { cfa: oneChannel, border: [3, 2] } },
    { name: '6×6', stored: { cfa: sixBySix, border: [5, 2], margin: 1 } },
    {
      name: 'black in a 6×6 pattern',
      stored: { black: { columns: 6, rows: 6, codes: Array.from({ length: 36 }, (_, i) => 400 + i) } },
    },
  ])('$name', async ({ stored }) => {
    expect(worstDifference(await decode(makeDng(stored)))).toBeLessThan(rounding)
  })

  it.each([1, 2, 3, 4, 5, 6, 7, 8])('orientation %i', async (orientation) => {
    for (const stored of [{ orientation }, { orientation, border: [5, 3], margin: 3, cfa: sixBySix } as const]) {
      expect(worstDifference(await decode(makeDng(stored)), orientation)).toBeLessThan(rounding)
    }
  })

  it('lossless JPEG', async () => {
    const dng = makeDng({ border: [5, 3] })
    const packed = { compression: 7, bytes: packLosslessJpeg(dng.codes, dng.width, dng.height) }
    expect(worstDifference(await decode({ ...dng, packed }))).toBeLessThan(rounding)
  })
})

describe('three linear channels', () => {
  const blacks = [300, 400, 500] as const
  const codes = Uint16Array.from({ length: width * height * 3 }, (_, i) => {
    const pixel = Math.floor(i / 3)
    const channel = (i % 3) as CfaColour
    const value = light(pixel % width, Math.floor(pixel / width), channel)
    return Math.round(blacks[channel] + value * (white - blacks[channel]))
  })
  const dng: SyntheticDng = {
    width,
    height,
    codes,
    samplesPerPixel: 3,
    black: { columns: 1, rows: 1, codes: blacks },
    white,
  }
  it('keep their own black and every code', async () => {
    const { sensor } = await decode(dng)
    expect(sensor).toMatchObject({ kind: 'linear', width, height, black: blacks, white })
    expect(sensor.codes).toEqual(codes)
  })

  it('keep noise below black', async () => {
    const { sensor } = await decode({ ...dng, codes: codes.map(() => 250) })
    expect(new Set(sensor.codes)).toEqual(new Set([250]))
  })

  it('are cropped and turned', async () => {
    const { sensor } = await decode({ ...dng, crop: [4, 3, 50, 40], orientation: 6 })
    expect([sensor.width, sensor.height]).toEqual([40, 50])
    const from = ((3 + 39) * width + 4) * 3
    expect(sensor.codes.slice(0, 3)).toEqual(codes.slice(from, from + 3))
  })
})

it('a noise profile in the file is taken as it is: variance = slope · value + offset (DNG 1.3)', async () => {
  const [slope, offset] = [0.0002, 0.0004]
  const { facts } = await decode({ ...makeDng({}), tags: [[51041, 10, [slope, offset]]] })
  expect(facts.noise.fullScaleElectrons).toBeCloseTo(5000, 3)
  expect(facts.noise.readNoiseElectrons).toBeCloseTo(100, 3)
})
