// Runs one description over the patches of a view: the same draw for probe, committed chain and comparison.
import type { RawShaderMaterial, WebGLRenderTarget } from 'three'

import type { PipelineDescription } from '../pipeline/description.ts'
import type { ChainPrograms } from './chain-program.ts'
import type { CodeSource } from './code-source.ts'
import type { Pass, Size } from './pass.ts'
import { type Columns, type Patch, patchArea, type PatchSource } from './patch.ts'
import type { ClippingShown } from './picture-request.ts'
import { type Placement, writeClipping, writePlacement, writeTextureSource } from './place-uniforms.ts'
import { codesViewStage, viewStage } from './stages.ts'

interface Painting {
  readonly patches: readonly Patch[]
  readonly description: PipelineDescription
  readonly placement: Placement
  readonly columns: Columns
  /** Null is the canvas. */
  readonly target: WebGLRenderTarget | null
  readonly size: Size
  readonly clipping?: ClippingShown
}

export interface PatchPainter {
  /** Materials that drawing these patches needs, so that they can be compiled ahead. */
  materials(patches: readonly Patch[], description: PipelineDescription): readonly RawShaderMaterial[]
  paint(painting: Painting): void
}

export function createPatchPainter(pass: Pass, programs: ChainPrograms, codes: CodeSource): PatchPainter {
  const stages = { texture: viewStage, codes: codesViewStage(codes) }
  const kindsOf = (patches: readonly Patch[]) => [...new Set(patches.map(({ source }) => source.kind))]

  function writeSource(material: RawShaderMaterial, source: PatchSource, { mosaicGains }: PipelineDescription): void {
    if (source.kind === 'texture') writeTextureSource(material.uniforms, source)
    else codes.write(material.uniforms, source.tile, mosaicGains)
  }

  return {
    materials: (patches, description) => kindsOf(patches).map((kind) => programs.material(stages[kind], description)),
    paint({ patches, description, placement, columns, target, size, clipping = 'none' }) {
      for (const kind of kindsOf(patches)) {
        const material = programs.material(stages[kind], description)
        writePlacement(material.uniforms, placement)
        writeClipping(material.uniforms, clipping)
        for (const patch of patches) {
          const area = patch.source.kind === kind ? patchArea(patch, placement, size.height, columns) : null
          if (!area) continue
          writeSource(material, patch.source, description)
          pass.draw(material, target, size, area)
        }
      }
    },
  }
}
