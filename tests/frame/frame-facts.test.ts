// The facts a frame opens with: means that are plain means, and an opening neutral that leaves no net colour.
import { describe, expect, it } from 'vitest'
import { frameCells, makeFrameFacts } from '../../src/frame/frame-facts.ts'
import type { CfaColour, SensorData } from '../../src/frame/frame.ts'
import { makeOverview } from '../../src/frame/overview.ts'
import { makeMosaic, oneChannel } from '../support/synthetic-sensor.ts'

const noise = { fullScaleElectrons: 50000, readNoiseElectrons: 3 }
const facts = (sensor: SensorData) => {
  const overview = makeOverview(sensor)
  return makeFrameFacts(sensor, overview, frameCells(sensor, overview, noise), noise, null)
}

/** Two materials in halves: log2 R/G and B/G of the plain mean are the means of theirs. */
const left = [0.5, 0.2, 0.05]
const right = [0.3, 0.25, 0.15]
const size = { width: 240, height: 160 }
const halves = (x: number, _y: number, colour: CfaColour) => (x < 120 ? left : right)[colour]

describe('opening neutral', () => {
  it('is the mean of the logs over the frame', () => {
    const [u, v] = facts(makeMosaic({ ...size, light: halves })).referenceNeutral
    const log = (top: number, below: number) =>
      (Math.log2(left[top] / left[below]) + Math.log2(right[top] / right[below])) / 2
    expect(u).toBeCloseTo(log(0, 1), 1)
    expect(v).toBeCloseTo(log(2, 1), 1)
  })

  it('takes no colour from clipped areas', () => {
    const light = (_x: number, y: number, colour: CfaColour) => (y < 80 ? left[colour] : [1.3, 1.2, 0.4][colour])
    const [u, v] = facts(makeMosaic({ ...size, light })).referenceNeutral
    expect([u, v]).toEqual([expect.closeTo(Math.log2(2.5), 2), expect.closeTo(-2, 2)])
  })

  it('is finite for black, for white and for one channel', () => {
    const sensors = [0, 1].map((level) => makeMosaic({ ...size, light: () => level }))
    const mono = makeMosaic({ ...size, cfa: oneChannel, light: (x) => x / 240 })
    for (const sensor of [...sensors, mono]) {
      expect(facts(sensor).referenceNeutral).toEqual([expect.closeTo(0, 1), expect.closeTo(0, 1)])
    }
  })
})

it('the mean is over unclipped pixels; facts survive JSON', () => {
  const light = (x: number, _y: number, colour: CfaColour) => (x < 120 ? left[colour] : 1)
  const made = facts(makeMosaic({ ...size, light }))
  expect(made.meanCameraRgb).toEqual(left.map((value) => expect.closeTo(value, 3)))
  expect(made.aspect).toBe(1.5)
  const { filterNm, ...rest } = made
  expect(filterNm).toBeUndefined()
  expect(JSON.parse(JSON.stringify(rest))).toEqual(rest)
})
