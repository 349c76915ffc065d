// Counted again by a plain loop over positions, which knows nothing of tables: exact equality over every phase of a pattern.
import { expect, test } from 'vitest'
import { HISTOGRAM_STOPS, sensorHistogram } from '../../src/frame/sensor-histogram.ts'
import type { CfaColour, LinearData, MosaicData } from '../../src/frame/frame.ts'

/** A small generator with a known sequence (Park & Miller 1988, "minimal standard"). */
function randomCodes(count: number, most: number): Uint16Array {
  let state = 20240507
  return Uint16Array.from({ length: count }, () => {
    state = (state * 48271) % 2147483647
    return state % (most + 1)
  })
}

const bayer: readonly CfaColour[] = [0, 1, 1, 2]
const sixBySix = 'GBGGRGRGRBGBGBGGRGGRGGBGBGBRGRGRGGBG'.split('').map((letter) => 'RGB'.indexOf(letter) as CfaColour)

/** The pattern moved by dx, dy: what a crop or a turn of the frame makes of it. */
const shifted = (colours: readonly CfaColour[], side: number, dx: number, dy: number) =>
  colours.map((_, n) => colours[((Math.floor(n / side) + dy) % side) * side + (((n % side) + dx) % side)])

function referenceCounts({ codes, width, cfa, black, white }: MosaicData) {
  const counts = [0, 1, 2].map(() => ({ photosites: 0, clipped: 0, black: 0 }))
  codes.forEach((code, i) => {
    const [x, y] = [i % width, Math.floor(i / width)]
    const of = counts[cfa.colours[(y % cfa.rows) * cfa.columns + (x % cfa.columns)]]
    of.photosites++
    if (code >= white) of.clipped++
    if (code <= black.codes[(y % black.rows) * black.columns + (x % black.columns)]) of.black++
  })
  return counts
}

test.each([
  ['2×2', bayer, 2],
  ['6×6', sixBySix, 6],
])('counts of clipped and black photosites are exact for %s in every phase', (_name, pattern, side) => {
  for (let phase = 0; phase < side * side; phase++) {
    const colours = shifted(pattern, side, phase % side, Math.floor(phase / side))
    const black = { columns: 2, rows: 2, codes: [60, 64, 66, 61] }
    const cfa = { columns: side, rows: side, colours }
    const codes = randomCodes(53 * 37, 1100)
    const mosaic: MosaicData = { kind: 'mosaic', width: 53, height: 37, codes, cfa, black, white: 1023 }
    const counted = sensorHistogram(mosaic).map(({ photosites, clipped, black: dark }) => ({
      photosites,
      clipped,
      black: dark,
    }))
    expect(counted).toEqual(referenceCounts(mosaic))
  }
})

test('three-channel data is counted by channel, one channel alone', () => {
  const codes = Uint16Array.of(0, 500, 1023, 12, 10, 2000, 700, 1, 9)
  const linear: LinearData = { kind: 'linear', width: 3, height: 1, codes, black: [10, 10, 10], white: 1023 }
  expect(sensorHistogram(linear).map(({ clipped, black }) => [clipped, black])).toEqual([
    [0, 1],
    [0, 2],
    [2, 1],
  ])
  const cfa = { columns: 1, rows: 1, colours: [1 as CfaColour] }
  const black = { columns: 1, rows: 1, codes: [0] }
  expect(sensorHistogram({ kind: 'mosaic', width: 9, height: 1, codes, cfa, black, white: 1023 })).toHaveLength(1)
})

test('a level stands where it lies in stops below saturation, and nothing inside the span is lost', () => {
  const cfa = { columns: 1, rows: 1, colours: [1 as CfaColour] }
  const black = { columns: 1, rows: 1, codes: [0] }
  const [{ bins }] = sensorHistogram({
    kind: 'mosaic',
    width: 4,
    height: 1,
    codes: Uint16Array.of(16384 >> 3, 16384 >> 3, 9000, 16384),
    cfa,
    black,
    white: 16384,
  })
  const perStop = bins.length / HISTOGRAM_STOPS
  const around = (stops: number) => {
    const edge = (HISTOGRAM_STOPS + stops) * perStop
    return bins[edge - 1] + bins[edge]
  }
  expect(around(-3)).toBeCloseTo(2, 9)
  expect(bins.at(-1)).toBe(1)
  expect(bins.reduce((sum, count) => sum + count)).toBeCloseTo(4, 9)
})

test('an even spread of codes rises by a factor of two a stop, without combs in the dark', () => {
  const codes = Uint16Array.from({ length: 16384 }, (_, i) => i)
  const cfa = { columns: 1, rows: 1, colours: [1 as CfaColour] }
  const black = { columns: 1, rows: 1, codes: [0] }
  const [{ bins }] = sensorHistogram({ kind: 'mosaic', width: 128, height: 128, codes, cfa, black, white: 16384 })
  bins.slice(1, -1).forEach((count, i) => expect(count / bins[i]).toBeCloseTo(2 ** (HISTOGRAM_STOPS / bins.length), 1))
})
