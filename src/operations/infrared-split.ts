// Infrared split: takes off red and green what infrared puts into them, linear `workingRgb` in and out, unbounded. Behind orange and
// red filters blue sees almost nothing but infrared, so visible red is R − kR·B and visible green G − kG·B in the sensor's channels.
// Shares are those of the frame's opening neutral: they fit every sensor alike and stay put while the neutral is looked for.
import glsl from '../../shaders/operations/infrared-split.glsl?raw'
import type { FrameFacts } from '../frame/frame.ts'
import { determinant, IDENTITY, invert, type Mat3, multiply, transform } from '../math/mat3.ts'
import { choice, slider } from './controls.ts'
import { defineOperation } from './define.ts'

/** At most this share of the neutral is taken off, because what is left is brought back to its level and noise with it (our choice). */
const LARGEST_SHARE = 0.9
/** A way here with a smaller determinant than this cannot be gone back (our choice). */
const LEAST_DETERMINANT = 1e-6

/** Infrared to red, visible red to green, visible green to blue, from (visible red, visible green, infrared): the colour-infrared-film look. */
const FILM_ROUTE: Mat3 = [0, 0, 1, 1, 0, 0, 0, 1, 0]

/** Light of the sensor's blue channel that is in its red or green for each unit in blue: kR and kG for shares of the opening neutral. */
function perBlue({ referenceNeutral }: FrameFacts, redShare: number, greenShare: number): [number, number] {
  const [log2RedGreen, log2BlueGreen] = referenceNeutral
  return [redShare * 2 ** (log2RedGreen - log2BlueGreen), greenShare * 2 ** -log2BlueGreen]
}

/** The way here from sensor channels in which the neutral is (1, 1, 1); the identity where the way cannot be gone back. */
function fromBalancedSensor(toHere: Mat3): { way: Mat3; neutral: readonly number[] } {
  if (Math.abs(determinant(toHere)) < LEAST_DETERMINANT) return { way: IDENTITY, neutral: [1, 1, 1] }
  const neutral = transform(invert(toHere), [1, 1, 1])
  if (!neutral.every((level) => level > 0)) return { way: IDENTITY, neutral: [1, 1, 1] }
  return { way: toHere.map((weight, i) => weight * neutral[i % 3]), neutral }
}

export const infraredSplit = defineOperation({
  id: 'infraredSplit',
  version: 1,
  title: 'Infrared split',
  place: 'free',
  controls: {
    redPercent: slider('Infrared in red', '%', 0, 90, 1, 0),
    greenPercent: slider('Infrared in green', '%', 0, 90, 1, 0),
    route: choice(
      'Gives',
      [
        { value: 'in-place', label: 'Visible red and green' },
        { value: 'film', label: 'Infrared as red' },
      ],
      'in-place',
    ),
  },
  derive({ redPercent, greenPercent, route }, facts, toHere = IDENTITY) {
    const { way, neutral } = fromBalancedSensor(toHere)
    const [kRed, kGreen] = perBlue(facts, redPercent / 100, greenPercent / 100)
    const red = Math.min((kRed * neutral[2]) / neutral[0], LARGEST_SHARE)
    const green = Math.min((kGreen * neutral[2]) / neutral[1], LARGEST_SHARE)
    const split = [1 / (1 - red), 0, -red / (1 - red), 0, 1 / (1 - green), -green / (1 - green), 0, 0, 1]
    return { split: multiply(route === 'film' ? FILM_ROUTE : way, multiply(split, invert(way))) }
  },
  apply(pixel, { split }) {
    const red = pixel[0]
    const green = pixel[1]
    const blue = pixel[2]
    pixel[0] = split[0] * red + split[1] * green + split[2] * blue
    pixel[1] = split[3] * red + split[4] * green + split[5] * blue
    pixel[2] = split[6] * red + split[7] * green + split[8] * blue
  },
  linear: ({ split }) => split,
  glsl,
  tolerance: 2e-6,
})
