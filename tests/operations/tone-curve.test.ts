import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { addPoint, movePoint, pointsOf, removePoint } from '../../src/operations/curve-points.ts'
import { toneCurve } from '../../src/operations/tone-curve.ts'
import { applyOperation } from '../support/apply-operation.ts'

/** Linear value of an sRGB-encoded grey, by colorjs.io (IEC 61966-2-1). */
const linear = (encoded: number) => new Color('srgb', [encoded, encoded, encoded]).to('srgb-linear').coords[0] as number
const encoded = (level: number) => new Color('srgb-linear', [level, level, level]).to('srgb').coords[0] as number
const greyAfter = (level: number, values: Parameters<typeof applyOperation<typeof toneCurve.controls>>[2]) =>
  applyOperation(toneCurve, [level, level, level], values)[0]

test('a grey at a point’s input leaves at its output, both as sRGB encodes them (colorjs.io)', () => {
  const points = [0, 0.04, 0.25, 0.18, 0.6, 0.75, 1, 0.96]
  for (const way of ['level', 'channels']) {
    for (let i = 0; i < points.length; i += 2) {
      expect(encoded(greyAfter(linear(points[i]), { points, way }))).toBeCloseTo(points[i + 1], 4)
    }
  }
})

test('on the level the ratios of the channels stay; on each channel every one follows the curve', () => {
  const points = [0, 0, 0.4, 0.25, 1, 1]
  const [r, g, b] = applyOperation(toneCurve, [0.5, 0.2, 0.1], { points, way: 'level' })
  expect(r / g).toBeCloseTo(2.5, 9)
  expect(g / b).toBeCloseTo(2, 9)
  const alone = applyOperation(toneCurve, [0.5, 0.2, 0.1], { points, way: 'channels' })
  ;[0.5, 0.2, 0.1].forEach((level, c) => expect(alone[c]).toBeCloseTo(greyAfter(level, { points }), 9))
})

test('black point and white point become 0 and 1; what lies below is black, what lies above goes on straight', () => {
  const values = { blackPercent: 5, whiteEv: 1 }
  expect(greyAfter(0.1, values)).toBeCloseTo(0, 12)
  expect(greyAfter(0.05, values)).toBe(0)
  expect(greyAfter(2, values)).toBeCloseTo(1, 6)
  expect(greyAfter(1.05, values)).toBeCloseTo(0.5, 6)
  expect(greyAfter(3.9, values)).toBeCloseTo(2, 5)
})

test('a raised black is a grey veil: it is added, and colours in the dark keep their ratios above it', () => {
  const points = [0, 0.2, 1, 1]
  const base = linear(0.2)
  const [r, g, b] = applyOperation(toneCurve, [0.006, 0.003, 0.0015], { points })
  expect((r - base) / (g - base)).toBeCloseTo(2, 6)
  expect((g - base) / (b - base)).toBeCloseTo(2, 6)
  expect(applyOperation(toneCurve, [0, 0, 0], { points })[0]).toBeCloseTo(base, 9)
})

test('points read as a curve that rises from 0 to 1, whatever the list holds', () => {
  expect(pointsOf([])).toEqual([
    [0, 0],
    [1, 1],
  ])
  const points = pointsOf([0.8, 0.3, 0.2, 0.5, 0.2001, 0.9, 3, 2, -1, 0.1])
  expect(points[0]).toEqual([0, 0.1])
  expect(points.at(-1)).toEqual([1, 1])
  points.slice(1).forEach(([x, y], i) => {
    expect(x).toBeGreaterThan(points[i][0])
    expect(y).toBeGreaterThanOrEqual(points[i][1])
  })
})

test('points are added on the curve, moved between their neighbours and taken away, but for the ends', () => {
  const added = addPoint([0, 0, 1, 1], 0.5)!
  expect(added).toEqual({ numbers: [0, 0, 0.5, 0.5, 1, 1], index: 1 })
  expect(addPoint(added.numbers, 0.505)).toBeNull()
  expect(movePoint(added.numbers, 1, [1.4, 1.4])).toEqual([0, 0, 0.98, 1, 1, 1])
  expect(movePoint(added.numbers, 0, [0.3, 0.7])).toEqual([0, 0.5, 0.5, 0.5, 1, 1])
  expect(removePoint(added.numbers, 1)).toEqual([0, 0, 1, 1])
  expect(removePoint(added.numbers, 2)).toEqual(added.numbers)
})
