// Hue turn: rotates (a, b) of OKLab, linear `workingRgb` in and out, unbounded. Lightness and chroma stay.
// Rotation is linear in the cube roots of the cone responses, so one matrix per step replaces the way to OKLab and back.
import glsl from '../../shaders/operations/hue-turn.glsl?raw'
import { lmsToWorking, oklabToRoots, rootsToOklab, workingToLms } from '../colour/oklab.ts'
import { multiply } from '../math/mat3.ts'
import { slider } from './controls.ts'
import { defineOperation } from './define.ts'

/** The rotation of (a, b) by `angleDeg`, counter-clockwise with a to the right and b up, acting on cube roots of lms. */
function turnOfRoots(angleDeg: number): number[] {
  const angle = (angleDeg * Math.PI) / 180
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)]
  return multiply(oklabToRoots, multiply([1, 0, 0, 0, cos, -sin, 0, sin, cos], rootsToOklab))
}

export const hueTurn = defineOperation({
  id: 'hueTurn',
  version: 1,
  title: 'Hue turn',
  place: 'free',
  controls: { angleDeg: slider('Angle', '°', -180, 180, 1, 0) },
  derive: (values) => ({ toLms: workingToLms, turn: turnOfRoots(values.angleDeg), fromLms: lmsToWorking }),
  apply(pixel, { toLms, turn, fromLms }) {
    const l = Math.cbrt(toLms[0] * pixel[0] + toLms[1] * pixel[1] + toLms[2] * pixel[2])
    const m = Math.cbrt(toLms[3] * pixel[0] + toLms[4] * pixel[1] + toLms[5] * pixel[2])
    const s = Math.cbrt(toLms[6] * pixel[0] + toLms[7] * pixel[1] + toLms[8] * pixel[2])
    const turnedL = (turn[0] * l + turn[1] * m + turn[2] * s) ** 3
    const turnedM = (turn[3] * l + turn[4] * m + turn[5] * s) ** 3
    const turnedS = (turn[6] * l + turn[7] * m + turn[8] * s) ** 3
    pixel[0] = fromLms[0] * turnedL + fromLms[1] * turnedM + fromLms[2] * turnedS
    pixel[1] = fromLms[3] * turnedL + fromLms[4] * turnedM + fromLms[5] * turnedS
    pixel[2] = fromLms[6] * turnedL + fromLms[7] * turnedM + fromLms[8] * turnedS
  },
  glsl,
  tolerance: 5e-6,
})
