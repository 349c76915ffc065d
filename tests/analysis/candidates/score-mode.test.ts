// The score of a colour, and its bulge, against sums done on paper.
import { expect, test } from 'vitest'
import { measureBulge } from '../../../src/analysis/candidates/bulge.ts'
import { bulgeWeights, neutralWeights, scoreMode } from '../../../src/analysis/candidates/score-mode.ts'

const at = (u: number, v: number) => ({ u, v, members: [] })
const mode = at(1.5, -0.7)
const features = { brightStops: -0.5, area: 0.1, along: 0.6, texture: 0.1, bulge: 0.06 }

test('1.3·(−.5) + .25·log2 .1001 + 5·.6 + 25·.06 = 3.020', () => {
  expect(scoreMode(mode, features, neutralWeights)).toBeCloseTo(3.02, 3)
})

test('colour alone: .25·log2 .1001 + 25·.06 = .670', () => {
  expect(scoreMode(mode, features, bulgeWeights)).toBeCloseTo(0.67, 3)
})

test('what is smooth, dim and at the sky end costs 2 in full; bright, textured or nearer to foliage it costs nothing', () => {
  const sky = { ...features, brightStops: -0.8, along: 0.9, texture: 0.01 }
  // 1.3·(−.8) + .25·log2 .1001 + 5·.9 + 25·.06 − 2
  expect(scoreMode(mode, sky, neutralWeights)).toBeCloseTo(2.13, 3)
  // 1.3·(−.2) in place of 1.3·(−.8), and no 2 less: 2.130 + .780 + 2
  expect(scoreMode(mode, { ...sky, brightStops: -0.2 }, neutralWeights)).toBeCloseTo(4.91, 3)
  expect(scoreMode(mode, { ...sky, texture: 0.05 }, neutralWeights)).toBeCloseTo(4.13, 3)
  // Half way between .6 and .9, half of it: 5·.75 in place of 5·.9, and 1 in place of 2.
  expect(scoreMode(mode, { ...sky, along: 0.75 }, neutralWeights)).toBeCloseTo(2.38, 3)
})

test('darkness and bulge count up to a limit', () => {
  const score = (change: object) => scoreMode(mode, { ...features, ...change }, neutralWeights)
  expect(score({ brightStops: -9 })).toBe(score({ brightStops: -4 }))
  expect(score({ bulge: 0.5 })).toBe(score({ bulge: 0.12 }))
})

test('a remembered grey costs by distance along and across the way of light, and no more than 9', () => {
  const cost = (u: number, v: number) =>
    scoreMode(mode, features, neutralWeights) - scoreMode(mode, features, neutralWeights, [mode.u + u, mode.v + v])
  expect(cost(0, 0)).toBe(0)
  expect(cost(0.65 * 0.15, -0.76 * 0.15)).toBeCloseTo(1, 1.5)
  expect(cost(0.76 * 0.05, 0.65 * 0.05)).toBeCloseTo(1, 1.5)
  expect(cost(5, 5)).toBeCloseTo(9, 9)
})

test('the bulge is the distance from the line of the ends in its lengths, positive towards higher sums', () => {
  // From (1, −.5) to (2, −1.5): square to it, (1.6, −.9) lies .1·√2 away, a tenth of the length √2.
  const [foliage, sky, grey] = [at(1, -0.5), at(2, -1.5), at(1.6, -0.9)]
  const bulge = measureBulge([sky, grey, foliage])
  expect(bulge(grey)).toBeCloseTo(0.1, 9)
  expect(bulge(foliage)).toBeCloseTo(0, 9)
  expect(bulge(sky)).toBeCloseTo(0, 9)
  expect(measureBulge([foliage, at(1.01, -0.5)])(grey)).toBe(0)
  expect(measureBulge([])(grey)).toBe(0)
})
