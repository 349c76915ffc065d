// Fuses a pipeline description into one GLSL function, as text. Which numbers the steps carry is left to uniforms
// (`chain-uniforms.ts`), so descriptions with equal `structureKey` share one program and a value change compiles nothing.
import type { Coefficient, Coefficients, Table } from '../operations/define.ts'
import type { DescribedStep, PipelineDescription } from './description.ts'
import { maskFunctions, maskUniformTexts, weightName, weightText } from './mask-text.ts'
import { resolveIncludes } from './shader-chunks.ts'

const pixelFacts = `struct PixelFacts {
  float peak;
  vec2 position;
};`

/** Name of the uniform struct of the step at `index`. */
export const stepUniform = (index: number) => `step${index}`

/** Name of the sampler uniform of a step's table. */
export const tableUniform = (index: number, table: string) => `${stepUniform(index)}_${table}`

/** Table names of a step in the order in which its function takes their samplers. */
const tableNames = (step: DescribedStep) => Object.keys(step.tables).sort()

const samplerTypes: Record<Table['kind'], string> = { '1d': 'sampler2D', '3d': 'sampler3D', plane: 'sampler2D' }

function memberDeclaration(name: string, value: Coefficient): string {
  if (typeof value === 'number') return `float ${name};`
  if (typeof value === 'boolean') return `int ${name};`
  if (value.length === 9) return `mat3 ${name};`
  if (value.length >= 2 && value.length <= 4) return `vec${value.length} ${name};`
  if (value.length > 0) return `float ${name}[${value.length}];`
  throw new RangeError(`The coefficient “${name}” is an empty list, which a shader cannot hold.`)
}

function structText(operationId: string, coefficients: Coefficients): string {
  const entries = Object.entries(coefficients)
  // GLSL has no empty structs.
  const members = entries.length > 0 ? entries.map(([name, value]) => memberDeclaration(name, value)) : ['int unused;']
  const name = `${operationId[0].toUpperCase()}${operationId.slice(1)}Coefficients`
  return `struct ${name} {\n  ${members.join('\n  ')}\n};`
}

function uniformTexts(step: DescribedStep, index: number): string[] {
  const struct = `${step.operation.id[0].toUpperCase()}${step.operation.id.slice(1)}Coefficients`
  return [
    ...(step.mask ? maskUniformTexts(step.mask, index) : []),
    `uniform ${struct} ${stepUniform(index)};`,
    ...tableNames(step).map(
      (table) => `uniform highp ${samplerTypes[step.tables[table].kind]} ${tableUniform(index, table)};`,
    ),
  ]
}

function callText(step: DescribedStep, index: number): string {
  const samplers = tableNames(step).map((table) => `, ${tableUniform(index, table)}`)
  const call = `${step.operation.id}(rgb, ${stepUniform(index)}, pixel${samplers.join('')})`
  if (!step.mask) return `  rgb = ${call};`
  return `${weightText(step.mask, index)}\n  rgb = mix(rgb, ${call}, ${weightName(index)});`
}

/** How far the step acts at a pixel, 0…1. */
const reachText = ({ operation, mask }: DescribedStep, index: number) =>
  mask ? weightName(index) : `planeAt(${tableUniform(index, operation.reach!)}, pixel.position)`

/**
 * GLSL ES 3.00 text that declares `PixelFacts`, one uniform struct per step, the operations once each, and
 * `vec3 runChain(vec3 rgb, PixelFacts pixel)`: `cameraRgb` in, encoded `displayRgb` out. It holds no `main` and no
 * precision statements. Throws a RangeError when two steps of one operation differ in the shape of their coefficients.
 */
export function fuse(description: PipelineDescription): string {
  const structs = new Map<string, string>()
  const seen = new Set<string>()
  const texts = [pixelFacts]
  for (const { operation, coefficients } of description.steps) {
    const struct = structText(operation.id, coefficients)
    const known = structs.get(operation.id)
    if (known === undefined) {
      structs.set(operation.id, struct)
      texts.push(struct, resolveIncludes(operation.glsl, seen))
    } else if (known !== struct) {
      throw new RangeError(
        `Two “${operation.title}” steps carry coefficients of different shapes; they cannot be fused.`,
      )
    }
  }
  if (description.steps.some(({ mask }) => mask)) texts.push(...maskFunctions(seen))
  description.steps.forEach((step, index) => texts.push(...uniformTexts(step, index)))
  const calls = description.steps.map(callText)
  const shown = description.shownReach
  if (shown !== undefined) texts.push(resolveIncludes('#include <table>\n#include <show-reach>', seen))
  const last =
    shown === undefined ? '  return rgb;' : `  return showReach(rgb, ${reachText(description.steps[shown], shown)});`
  texts.push(['vec3 runChain(vec3 rgb, PixelFacts pixel) {', ...calls, last, '}'].join('\n'))
  return texts.join('\n')
}
