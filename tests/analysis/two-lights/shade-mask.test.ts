// Two lights on a plane painted for the purpose, and the arithmetic of marks on paper.
import { describe, expect, it, test } from 'vitest'
import { colourOfLevel } from '../../../src/analysis/two-lights/colour-of-level.ts'
import { areTwoLights, lightDistance, type LightMark } from '../../../src/analysis/two-lights/light-marks.ts'
import { shadeMaskOf } from '../../support/shade-mask-of.ts'
import { type Stroke, strokesOfNumbers, strokesToNumbers } from '../../../src/analysis/two-lights/strokes.ts'

const sun: LightMark = [1.91, -1.04, -1]
const shade: LightMark = [2.17, -1.42, -1 + Math.log2(0.1)]

/** Left half in sun, right half in shade, under bands of three reflectances and one other colour. */
function twoHalves(width = 240, height = 160) {
  const rgba = new Float32Array(width * height * 4)
  for (let i = 0; i < width * height; i++) {
    const [u, v, log2Red] = i % width < width / 2 ? sun : shade
    const band = Math.floor((Math.floor(i / width) / height) * 4)
    const red = 2 ** log2Red * [1, 0.3, 0.7, 0.9][band]
    const green = red / 2 ** (u - (band === 3 ? 0.6 : 0))
    rgba.set([red, green, green * 2 ** (v + (band === 3 ? 0.3 : 0)), red], i * 4)
  }
  return { width, height, rgba, scale: 2 }
}

const at = ({ width, plane }: { width: number; plane: Float32Array }, x: number, y: number) => plane[y * width + x]

describe('marks', () => {
  test('distance and whether two neutrals are worth it', () => {
    expect(lightDistance(sun, shade)).toBeCloseTo(Math.hypot(0.26, 0.38), 9)
    expect(areTwoLights(sun, shade)).toBe(true)
    expect(areTwoLights([1, -1, 0], [1.04, -1.04, -3])).toBe(false)
    expect(areTwoLights(sun, [...shade.slice(0, 2), 0] as unknown as LightMark)).toBe(false)
  })

  // Computed by us: half of the sun at R 1 : .1 gives (1.9318, −1.0660): 8 and 7 % of the way.
  test('half the sun leaves most of its colour', () => {
    const half = Math.log2(0.5 + 0.5 * 0.1) / Math.log2(0.1)
    const way = colourOfLevel(sun, shade)(half)
    expect(way).toBeGreaterThan(0.065)
    expect(way).toBeLessThan(0.085)
    expect([0, 1, -0.2, 1.3].map(colourOfLevel(sun, shade))).toEqual([0, 1, -0.2, 1.3])
  })
})

describe('mask', () => {
  const mask = shadeMaskOf({ overview: twoHalves(), sun, shade })!

  it('is 0 in sun and 1 in shade, whatever the material', () => {
    for (const y of [20, 60, 100, 140]) {
      expect(at(mask, 40, y)).toBeLessThan(0.03)
      expect(at(mask, 200, y)).toBeGreaterThan(0.97)
    }
  })

  it('is not made where one neutral serves both lights', () => {
    const near: LightMark = [1.94, -1.08, -3]
    expect(shadeMaskOf({ overview: twoHalves(), sun, shade: near })).toBeNull()
  })

  it('stays in 0…1 over black and clipped places', () => {
    const overview = twoHalves()
    overview.rgba.fill(0, 0, 4 * 240 * 30)
    overview.rgba.fill(1, 4 * 240 * 130)
    const { plane } = shadeMaskOf({ overview, sun, shade })!
    expect(plane.every((value) => value >= 0 && value <= 1)).toBe(true)
  })

  it('is at most half a million cells large', () => {
    const { width, height } = shadeMaskOf({ overview: twoHalves(1500, 1000), sun, shade })!
    expect(width * height).toBeLessThanOrEqual(500_000)
    expect(width / height).toBeCloseTo(1.5, 1)
  })

  it('obeys strokes', () => {
    const strokes: Stroke[] = [
      {
        points: [
          [0.1, 0.5],
          [0.3, 0.5],
        ],
        radius: 0.08,
        light: 'shade',
      },
    ]
    const corrected = shadeMaskOf({ overview: twoHalves(), sun, shade }, strokes)!
    expect(at(corrected, 48, 80)).toBeGreaterThan(0.97)
    expect(at(corrected, 48, 10)).toBeLessThan(0.03)
  })
})

test('strokes survive as numbers, and a list that breaks off keeps what is whole', () => {
  const strokes: Stroke[] = [
    { points: [[0.1, 0.2]], radius: 0.05, light: 'sun' },
    {
      points: [
        [0.3, 0.4],
        [0.5, 0.6],
      ],
      radius: 0.02,
      light: 'shade',
    },
  ]
  const numbers = strokesToNumbers(strokes)
  expect(strokesOfNumbers(numbers)).toEqual(strokes)
  expect(strokesOfNumbers(numbers.slice(0, -1))).toEqual(strokes.slice(0, 1))
  expect(strokesOfNumbers([1, 0.1, 1e9])).toEqual([])
})
