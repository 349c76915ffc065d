import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { DISPLAY_P3_PRIMARIES, rgbToXyz } from '../../src/colour/primaries.ts'
import { transform } from '../../src/math/mat3.ts'
import { RED_BLUE_EXCHANGE } from '../../src/colour/mix-matrices.ts'
import { defaultChain, openingExposureEv } from '../../src/edits/default-chain.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { plainFacts } from '../support/apply-operation.ts'
import { openCsv } from '../support/open-data.ts'

const operationsFor = (filterNm: number | null | undefined) =>
  defaultChain({ ...plainFacts, filterNm }).map(({ operation }) => operation)

test('red and blue are exchanged behind filters that leave colour, and only there', () => {
  for (const filterNm of [550, 590, 665, 720, 740]) {
    expect(operationsFor(filterNm)).toEqual(['neutral', 'channelMix', 'exposureContrast', 'outputTransform'])
  }
  for (const filterNm of [null, undefined, 750, 850]) {
    expect(operationsFor(filterNm)).toEqual(['neutral', 'exposureContrast', 'outputTransform'])
  }
  expect(defaultChain(plainFacts)[1].values.rows).toEqual(RED_BLUE_EXCHANGE)
})

test('exposure brings the mean to 25 %, within four stops, and stays 0 without light', () => {
  expect(openingExposureEv({ ...plainFacts, meanCameraRgb: [0.342, 0.1, 0.054] })).toBe(1.3)
  expect(openingExposureEv({ ...plainFacts, meanCameraRgb: [0.00342, 0.001, 0.00054] })).toBe(4)
  expect(openingExposureEv({ ...plainFacts, meanCameraRgb: [0, 0, 0] })).toBe(0)
})

test('a developed file opens in its own colours: those of colorjs.io, exchanged where usual, grey exact', () => {
  const facts = { ...plainFacts, developed: true, cameraToXyz: rgbToXyz(DISPLAY_P3_PRIMARIES), filterNm: null }
  const rows = defaultChain(facts)[1].values.rows as number[]
  const exchanged = defaultChain({ ...facts, filterNm: 590 })[1].values.rows as number[]
  for (const colour of [
    [1, 0, 0],
    [0, 1, 0],
    [0.2, 0.5, 0.9],
  ] as [number, number, number][]) {
    const expected = new Color('p3-linear', colour).to('rec2020-linear').coords.map(Number)
    transform(rows, colour).forEach((value, i) => expect(value).toBeCloseTo(expected[i], 5))
    transform(exchanged, colour).forEach((value, i) => expect(value).toBeCloseTo(expected[2 - i], 5))
  }
  for (let row = 0; row < 9; row += 3) expect(rows[row] + rows[row + 1] + rows[row + 2]).toBeCloseTo(1, 15)
  expect(defaultChain(facts)[2].values.contrast).toBe(0)
})

const looks = openCsv('checks/false_colour_looks.csv')
const cameras = ['camA', 'camB']

test.skipIf(!looks).each(cameras)('%s at 590 nm shows the tabulated looks (skipped without open data)', (camera) => {
  const rows = looks!.filter((row) => row.camera === camera && row.filter === '590' && row.neutral_on === 'flat grey')
  const balanced = rows.filter((row) => row.swap_RB === '0')
  const exchanged = rows.filter((row) => row.swap_RB === '1')
  const linear = (row: Record<string, string>) =>
    [row.R_rel_white, row.G_rel_white, row.B_rel_white].map(Number) as [number, number, number]
  const facts = { ...plainFacts, meanCameraRgb: [0.1, 0.1, 0.1] as const, referenceNeutral: [0, 0] as const }
  const one = { x: 0, y: 0, width: 1, height: 1, frameWidth: 1, frameHeight: 1 }
  expect(balanced.length).toBeGreaterThan(5)
  for (const row of balanced) {
    const rgba = Float32Array.of(...linear(row).map((level) => level / 4), 0.3)
    const shown = renderOnCpu(describe(defaultChain(facts), facts), rgba, one)
    const twin = exchanged.find(({ subject }) => subject === row.subject)!
    const [lightness, chroma, hueDeg] = new Color('rec2020-linear', linear(twin)).to('oklch').coords
    const [shownLightness, shownChroma, shownHueDeg] = new Color('srgb', [shown[0], shown[1], shown[2]]).to(
      'oklch',
    ).coords
    expect(shownChroma! / shownLightness!).toBeCloseTo(chroma! / lightness!, 4)
    expect(Math.abs(shownHueDeg! - hueDeg!)).toBeLessThan(0.5)
  }
})
