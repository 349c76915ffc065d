// The stages a chain runs in: where its colours come from and what its output becomes.
import place from '../../shaders/place.glsl?raw'
import sourceTexture from '../../shaders/source-texture.glsl?raw'
import view from '../../shaders/view.glsl?raw'
import type { Stage } from './chain-program.ts'
import { placeUniforms, textureSourceUniforms } from './place-uniforms.ts'

/** The overview or a demosaiced tile, drawn as a picture. */
export const viewStage: Stage = {
  key: 'view',
  before: [place, sourceTexture],
  after: [view],
  uniforms: () => ({ ...placeUniforms(), ...textureSourceUniforms() }),
}
