// Tone curve: linear `workingRgb` in and out, unbounded. Black and white point first, then a curve through free points over
// the level as sRGB encodes it, so that a place on the curve is a place in the finished picture's histogram. Either the level
// moves and the ratios of the channels stay, or each channel moves by itself.
import glsl from '../../shaders/operations/tone-curve.glsl?raw'
import { decode, encode, SRGB_CURVE } from '../colour/transfer-curve.ts'
import { choice, numbers, slider } from './controls.ts'
import { curveOf } from './curve-points.ts'
import { defineOperation, type SliderControl, type Table } from './define.ts'

/** Entries of the table: the most every WebGL2 device takes. Between two of them the curve is straight. */
const ENTRIES = 2048
/** Linear level of the first entry: below it the ratio of output to input stays, so that noise around 0 is not blown up. */
const LEAST_LEVEL = decode(SRGB_CURVE, 1 / (ENTRIES - 1))

interface BakedCurve {
  /** Linear output above its own black, over the curve's axis. */
  readonly rise: Table
  /** Linear output at black, and slope at white by which the curve goes on beyond it. */
  readonly base: number
  readonly slopeAtWhite: number
}

/** Kept by the list of points itself, so that one list is one table. */
const baked = new WeakMap<readonly number[], BakedCurve>()

function bake(points: readonly number[]): BakedCurve {
  const curve = curveOf(points)
  const base = decode(SRGB_CURVE, curve.at(0))
  const data = new Float32Array(ENTRIES * 3)
  for (let i = 0; i < ENTRIES; i++) {
    const rise = decode(SRGB_CURVE, curve.at(i / (ENTRIES - 1))) - base
    data.fill(rise, i * 3, i * 3 + 3)
  }
  // d decode / d encode on both sides of the curve, both at the power part of the sRGB curve or its line.
  const slopeOf = (encoded: number) => (decode(SRGB_CURVE, encoded + 1e-6) - decode(SRGB_CURVE, encoded - 1e-6)) / 2e-6
  const slopeAtWhite = (curve.lastSlope * slopeOf(curve.at(1))) / slopeOf(1)
  return { rise: { kind: '1d', width: ENTRIES, height: 1, data }, base, slopeAtWhite }
}

function bakedCurve(points: readonly number[]): BakedCurve {
  const known = baked.get(points) ?? bake(points)
  baked.set(points, known)
  return known
}

const isStraight = (points: readonly number[]) => points.every((value, i) => i % 2 === 0 || value === points[i - 1])

/** Output above the base for a level between black (0) and white (1), and beyond. */
function riseAt({ data }: Table, slopeAtWhite: number, level: number): number {
  const place = Math.min(encode(SRGB_CURVE, Math.min(Math.max(level, 0), 1)), 1) * (ENTRIES - 1)
  const low = Math.min(Math.floor(place), ENTRIES - 2)
  const from = data[low * 3]
  return from + (place - low) * (data[low * 3 + 3] - from) + slopeAtWhite * Math.max(level - 1, 0)
}

interface Points {
  readonly blackPercent: number
  readonly whiteEv: number
}

/** Linear levels of the black and the white point. */
function pointLevels({ blackPercent, whiteEv }: Points): { black: number; white: number } {
  const white = 2 ** whiteEv
  return { black: (white * blackPercent) / 100, white }
}

/** Where a linear level stands on the curve's axis: black at 0, white at 1. */
export function curveAxis(points: Points): (level: number) => number {
  const { black, white } = pointLevels(points)
  return (level) => encode(SRGB_CURVE, (level - black) / (white - black))
}

/** Values at which these linear levels are black and white, within the travel of the controls. */
export function pointsAt(black: number, white: number): Points {
  const { blackPercent, whiteEv } = toneCurve.controls
  const within = (value: number, { min, max }: SliderControl) =>
    Math.round(Math.min(Math.max(value, min), max) * 100) / 100
  const ev = within(Math.log2(Math.max(white, 2 ** whiteEv.min)), whiteEv)
  return { whiteEv: ev, blackPercent: within((100 * black) / 2 ** ev, blackPercent) }
}

export const toneCurve = defineOperation({
  id: 'toneCurve',
  version: 1,
  title: 'Tone curve',
  place: 'free',
  controls: {
    points: numbers('Curve points', [0, 0, 1, 1], { variable: true }),
    way: choice(
      'Acts on',
      [
        { value: 'level', label: 'the level' },
        { value: 'channels', label: 'each channel' },
      ],
      'level',
    ),
    blackPercent: slider('Black point, of white', '%', 0, 25, 0.05, 0, { bounded: true }),
    whiteEv: slider('White point', 'EV', -4, 4, 0.05, 0, { bounded: true }),
  },
  derive(values) {
    const { base, slopeAtWhite } = bakedCurve(values.points)
    const { black, white } = pointLevels(values)
    return {
      acts: !(isStraight(values.points) && black === 0 && white === 1),
      perChannel: values.way === 'channels',
      black,
      unit: 1 / (white - black),
      base,
      slopeAtWhite,
      leastLevel: LEAST_LEVEL * white,
      slope: SRGB_CURVE.slope,
      threshold: SRGB_CURVE.threshold,
      exponent: SRGB_CURVE.exponent,
      scale: SRGB_CURVE.scale,
    }
  },
  tables: (values) => ({ rise: bakedCurve(values.points).rise }),
  apply(pixel, k, { rise }) {
    if (!k.acts) return
    const mean = (pixel[0] + pixel[1] + pixel[2]) / 3
    for (let c = 0; c < 3; c++) {
      const level = Math.max(k.perChannel ? pixel[c] : mean, k.leastLevel)
      pixel[c] = k.base + (pixel[c] * riseAt(rise, k.slopeAtWhite, (level - k.black) * k.unit)) / level
    }
  },
  glsl,
  tolerance: 5e-6,
})
