import fc from 'fast-check'
import { describe, expect, test } from 'vitest'
import { oklabToOklch, workingToOklab } from '../../src/colour/oklab.ts'
import { meanLevel, neutral, seenStart } from '../../src/operations/neutral.ts'
import { initialValues } from '../../src/operations/values.ts'
import { applyOperation, plainFacts } from '../support/apply-operation.ts'
import { openCsv } from '../support/open-data.ts'

/** Ends and middles of the gains that published sensor sensitivities ask for behind long-pass filters: R .15–2.5, B .5–12. */
const gains = [0.15, 0.3, 1, 2.5].flatMap((red) => [0.5, 1, 3, 12].map((blue) => [red, blue] as const))

const relativeChroma = (rgb: readonly number[]) => {
  const [lightness, chroma] = oklabToOklch(workingToOklab(rgb))
  return chroma / lightness
}

const triplets = openCsv('checks/triplets.csv')
test.skipIf(!triplets)(
  'every camera, filter, light and material can be made neutral (skipped without open data)',
  () => {
    expect(triplets!.length).toBeGreaterThan(3000)
    for (const row of triplets!) {
      const camera = [Number(row.R_over_G), 1, Number(row.B_over_G)].map((ratio) => ratio * Number(row.G_rel_white))
      const picked = { redStops: Math.log2(camera[1] / camera[0]), blueStops: Math.log2(camera[1] / camera[2]) }
      const [r, g, b] = applyOperation(neutral, camera, { ...picked, highlightGuard: false })
      expect(Math.abs(Math.log2(r / g))).toBeLessThan(0.005)
      expect(Math.abs(Math.log2(b / g))).toBeLessThan(0.005)
    }
  },
)

test('gains far beyond any kelvin scale are not limited', () => {
  const { gains } = neutral.derive(
    { ...initialValues(neutral), redStops: -12, blueStops: 15, holdBrightness: false, highlightGuard: false },
    plainFacts,
  )
  expect(gains).toEqual([2 ** -12, 1, 2 ** 15])
})

test('brightness hold keeps the frame’s mean level wherever the neutral roams', () => {
  const wanted = meanLevel(plainFacts, -plainFacts.referenceNeutral[0], -plainFacts.referenceNeutral[1])
  for (const [red, blue] of gains) {
    const rgb = applyOperation(neutral, plainFacts.meanCameraRgb, {
      redStops: Math.log2(red),
      blueStops: Math.log2(blue),
    })
    expect((rgb[0] + rgb[1] + rgb[2]) / 3).toBeCloseTo(wanted, 12)
  }
})

test('a frame without light keeps its gains finite', () => {
  const facts = { ...plainFacts, meanCameraRgb: [0, -0.001, 0] as const }
  expect(applyOperation(neutral, [0.1, 0.1, 0.1], {}, { facts })).toEqual([0.1, 0.1, 0.1])
})

describe.each(gains)(
  'gains R %f, B %f: a grey ramp from 3 stops below to 2.5 stops over the first clipping',
  (red, blue) => {
    const stops = Array.from({ length: 221 }, (_, i) => -3 + i * 0.025)
    const firstClipping = Math.min(1, red, blue)
    const ramp = stops.map((stop) => {
      const level = firstClipping * 2 ** stop
      const raw = [level / red, level, level / blue].map((channel) => Math.min(channel, 1))
      const values = { redStops: Math.log2(red), blueStops: Math.log2(blue), holdBrightness: false }
      return applyOperation(neutral, raw, values, { peak: Math.max(...raw) })
    })

    test('stays grey, C/L ≤ .01', () => {
      for (const rgb of ramp) expect(relativeChroma(rgb)).toBeLessThanOrEqual(0.01)
    })

    test('never falls, and rises as long as a channel still measures', () => {
      const lastClipping = Math.max(1, red, blue)
      for (let i = 1; i < ramp.length; i++) {
        const isMeasured = firstClipping * 2 ** stops[i] < lastClipping
        const rise = Math.min(ramp[i][0] - ramp[i - 1][0], ramp[i][1] - ramp[i - 1][1])
        expect(isMeasured ? rise > 0 : rise >= -1e-12).toBe(true)
      }
    })
  },
)

test('any gains between those ends, brightness held: a grey 0 to 2.5 stops over the first clipping stays grey and never falls', () => {
  const logBetween = (low: number, high: number) =>
    fc.double({ min: Math.log2(low), max: Math.log2(high), noNaN: true, noDefaultInfinity: true })
  fc.assert(
    fc.property(logBetween(0.15, 2.5), logBetween(0.5, 12), (redStops, blueStops) => {
      const firstClipping = Math.min(1, 2 ** redStops, 2 ** blueStops)
      let before = 0
      for (let stop = 0; stop <= 2.5; stop += 0.02) {
        const level = firstClipping * 2 ** stop
        const raw = [level / 2 ** redStops, level, level / 2 ** blueStops].map((channel) => Math.min(channel, 1))
        const rgb = applyOperation(neutral, raw, { redStops, blueStops }, { peak: Math.max(...raw) })
        expect(relativeChroma(rgb)).toBeLessThanOrEqual(0.01)
        expect(Math.min(...rgb)).toBeGreaterThanOrEqual(before - 1e-12)
        before = Math.min(...rgb)
      }
    }),
    { numRuns: 300, seed: 6 },
  )
})

test('far below saturation the guard changes nothing', () => {
  const values = { redStops: -1.5, blueStops: 1, holdBrightness: false }
  const camera = [0.6, 0.2, 0.1]
  expect(applyOperation(neutral, camera, values, { peak: 0.6 })).toEqual(
    applyOperation(neutral, camera, { ...values, highlightGuard: false }, { peak: 0.6 }),
  )
})

test('warmth as seen counts from the neutral before the shift until the neutral is set otherwise', () => {
  const values = { ...initialValues(neutral), redStops: 0.4, blueStops: -0.2 }
  expect(seenStart(values)).toEqual({ redStops: 0.4, blueStops: -0.2 })
  const shifted = { ...values, seenFrom: [0.1, 0.2, 0.4, -0.2] }
  expect(seenStart(shifted)).toEqual({ redStops: 0.1, blueStops: 0.2 })
  expect(seenStart({ ...shifted, redStops: 0.5 })).toEqual({ redStops: 0.5, blueStops: -0.2 })
})
