// Channel mix: each output channel is a weighted sum of the three, linear `workingRgb`, unbounded.
// Rows that sum to 1 keep greys grey; the usual mixes are made in `colour/mix-matrices.ts`.
import glsl from '../../shaders/operations/channel-mix.glsl?raw'
import { IDENTITY_MIX, withLuminanceKept } from '../colour/mix-matrices.ts'
import { numbers, toggle } from './controls.ts'
import { defineOperation } from './define.ts'

export const channelMix = defineOperation({
  id: 'channelMix',
  version: 1,
  title: 'Channel mix',
  place: 'free',
  controls: {
    rows: numbers('Rows red, green, blue', IDENTITY_MIX),
    keepLuminance: toggle('Keep luminance', false),
  },
  derive: ({ rows, keepLuminance }) => ({ mix: keepLuminance ? withLuminanceKept(rows) : rows }),
  apply(pixel, { mix }) {
    const red = pixel[0]
    const green = pixel[1]
    const blue = pixel[2]
    pixel[0] = mix[0] * red + mix[1] * green + mix[2] * blue
    pixel[1] = mix[3] * red + mix[4] * green + mix[5] * blue
    pixel[2] = mix[6] * red + mix[7] * green + mix[8] * blue
  },
  linear: ({ mix }) => mix,
  glsl,
  tolerance: 2e-6,
})
