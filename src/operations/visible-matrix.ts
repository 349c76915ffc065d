// Visible matrix: blends from balanced sensor numbers to the colours that the camera's own matrix for visible light gives them;
// linear `workingRgb` in and out, unbounded. For full spectrum, where most of the light has a colorimetric truth.
import glsl from '../../shaders/operations/visible-matrix.glsl?raw'
import { xyzToWorking } from '../colour/working-space.ts'
import { IDENTITY, multiply } from '../math/mat3.ts'
import { slider } from './controls.ts'
import { defineOperation } from './define.ts'

export const visibleMatrix = defineOperation({
  id: 'visibleMatrix',
  version: 1,
  title: 'Visible light',
  place: 'free',
  controls: { amountPercent: slider('Camera’s matrix', '%', 0, 100, 1, 0) },
  derive({ amountPercent }, { cameraToXyz }) {
    const amount = amountPercent / 100
    const full = cameraToXyz ? multiply(xyzToWorking, cameraToXyz) : IDENTITY
    return { matrix: full.map((weight, i) => amount * weight + (1 - amount) * IDENTITY[i]) }
  },
  apply(pixel, { matrix }) {
    const red = pixel[0]
    const green = pixel[1]
    const blue = pixel[2]
    pixel[0] = matrix[0] * red + matrix[1] * green + matrix[2] * blue
    pixel[1] = matrix[3] * red + matrix[4] * green + matrix[5] * blue
    pixel[2] = matrix[6] * red + matrix[7] * green + matrix[8] * blue
  },
  linear: ({ matrix }) => matrix,
  glsl,
  tolerance: 2e-6,
})
