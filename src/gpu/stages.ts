// The stages a chain runs in: where its colours come from and what its output becomes.
import exportText from '../../shaders/export.glsl?raw'
import place from '../../shaders/place.glsl?raw'
import quantise from '../../shaders/quantise.glsl?raw'
import sourceCodes from '../../shaders/source-codes.glsl?raw'
import sourceTexture from '../../shaders/source-texture.glsl?raw'
import view from '../../shaders/view.glsl?raw'
import type { Stage } from './chain-program.ts'
import type { CodeSource } from './code-source.ts'

/** The overview or a demosaiced tile, drawn as a picture. */
export const viewStage: Stage = { key: 'view', before: [place, sourceTexture], after: [view] }

/** Raw codes demosaiced at every draw, nearest photosite, drawn as a picture. */
export const codesViewStage = (source: CodeSource): Stage => ({
  key: `view ${source.key}`,
  before: [place, ...source.text, sourceCodes],
  after: [view],
})

/** Raw codes demosaiced in 32-bit float, finished and quantised for a file. */
export const exportStage = (source: CodeSource): Stage => ({
  key: `export ${source.key}`,
  before: [place, ...source.text, sourceCodes],
  after: [quantise, exportText],
})
