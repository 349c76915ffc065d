// The stages a chain runs in: where its colours come from and what its output becomes.
import place from '../../shaders/place.glsl?raw'
import sourceMosaic from '../../shaders/source-mosaic.glsl?raw'
import sourceTexture from '../../shaders/source-texture.glsl?raw'
import view from '../../shaders/view.glsl?raw'
import type { Stage } from './chain-program.ts'
import type { CodeSource } from './code-source.ts'

/** The overview or a demosaiced tile, drawn as a picture. */
export const viewStage: Stage = { key: 'view', before: [place, sourceTexture], after: [view] }

/** Raw codes demosaiced at every draw, nearest photosite, drawn as a picture. */
export const codesViewStage = (source: CodeSource): Stage => ({
  key: `view ${source.key}`,
  before: [place, source.text, sourceMosaic],
  after: [view],
})
