// Materials that run a whole chain in one pass. One per stage and `structureKey` is compiled and kept;
// a change of values only changes uniforms.
import type { RawShaderMaterial, Texture } from 'three'

import { chainTables, chainUniforms } from '../pipeline/chain-uniforms.ts'
import type { PipelineDescription } from '../pipeline/description.ts'
import { fuse } from '../pipeline/fuse.ts'
import type { Table } from '../operations/define.ts'
import { passMaterial, setUniforms } from './pass.ts'
import { tableTexture } from './table-texture.ts'

/** Programs kept; a session moves between few structures (our choice). */
const keptPrograms = 24

/** Where colours come from and what becomes of them: shader text before and after the chain. */
export interface Stage {
  readonly key: string
  readonly before: readonly string[]
  readonly after: readonly string[]
}

interface Program {
  readonly material: RawShaderMaterial
  readonly tables: Map<string, { readonly table: Table; readonly texture: Texture }>
}

export interface ChainPrograms {
  /** The material of a stage with the description's numbers in place; valid until the next call. */
  material(stage: Stage, description: PipelineDescription): RawShaderMaterial
  dispose(): void
}

function disposeProgram({ material, tables }: Program): void {
  material.dispose()
  for (const { texture } of tables.values()) texture.dispose()
}

function writeValues({ material, tables }: Program, description: PipelineDescription): void {
  setUniforms(material.uniforms, chainUniforms(description))
  for (const [name, table] of Object.entries(chainTables(description))) {
    const held = tables.get(name)
    if (held?.table !== table) {
      held?.texture.dispose()
      tables.set(name, { table, texture: tableTexture(table) })
    }
    setUniforms(material.uniforms, { [name]: tables.get(name)?.texture })
  }
}

export function createChainPrograms(): ChainPrograms {
  const programs = new Map<string, Program>()
  return {
    material(stage, description) {
      const key = `${stage.key} ${description.structureKey}`
      const program = programs.get(key) ?? {
        material: passMaterial([...stage.before, fuse(description), ...stage.after]),
        tables: new Map(),
      }
      programs.delete(key)
      programs.set(key, program)
      for (const [oldKey, old] of programs) {
        if (programs.size <= keptPrograms) break
        disposeProgram(old)
        programs.delete(oldKey)
      }
      writeValues(program, description)
      return program.material
    },
    dispose() {
      for (const program of programs.values()) disposeProgram(program)
      programs.clear()
    },
  }
}
