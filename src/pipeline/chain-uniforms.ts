// The numbers of a pipeline description in the form the fused shader's uniforms take. Pure data; a value change ends here.
import type { Coefficient, Table } from '../operations/define.ts'
import type { PipelineDescription } from './description.ts'
import { stepUniform, tableUniform } from './fuse.ts'
import { maskNumbers, maskUniform, materialUniform } from './mask-text.ts'

type UniformValue = number | readonly number[]
export type UniformStruct = Readonly<Record<string, UniformValue>>

/** Matrices are row-major here and column-major in GLSL. */
function uniformValue(value: Coefficient): UniformValue {
  if (typeof value === 'boolean') return value ? 1 : 0
  if (typeof value === 'number' || value.length !== 9) return value
  const [a, b, c, d, e, f, g, h, i] = value
  return [a, d, g, b, e, h, c, f, i]
}

/** Uniform structs by name, one per step and one per mask. */
export function chainUniforms(description: PipelineDescription): Record<string, UniformStruct> {
  return Object.fromEntries(
    description.steps.flatMap(({ coefficients, mask }, index) => {
      const values = Object.entries(coefficients).map(([name, value]) => [name, uniformValue(value)])
      const step = [stepUniform(index), Object.fromEntries(values)]
      return mask ? [step, [maskUniform(index), maskNumbers(mask)]] : [step]
    }),
  )
}

/** Tables by the name of their sampler uniform. */
export function chainTables(description: PipelineDescription): Record<string, Table> {
  return Object.fromEntries(
    description.steps.flatMap(({ tables, mask }, index) => {
      const own = Object.entries(tables).map(([name, table]): [string, Table] => [tableUniform(index, name), table])
      return mask?.readsMaterial ? [...own, [materialUniform(index), mask.material] as const] : own
    }),
  )
}
