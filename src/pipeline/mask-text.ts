// The mask of a step as shader text: its parts unrolled, so that only what it is made of is compiled and worked out; their numbers
// stay uniforms.
import { rootsToOklab, workingToLms } from '../colour/oklab.ts'
import type { DescribedMask } from '../operations/masks/mask.ts'
import masks from '../../shaders/masks.glsl?raw'
import { resolveIncludes } from './shader-chunks.ts'

export const maskUniform = (index: number) => `mask${index}`
export const materialUniform = (index: number) => `${maskUniform(index)}_material`
/** Name of the weight of the step at `index` within the chain's function. */
export const weightName = (index: number) => `weight${index}`

/** What a mask is made of, without its numbers. */
export function maskStructure({ parts, inverted }: DescribedMask): string {
  const words = parts.map(({ kind, inverted: turned, combine }) => `${combine} ${turned ? '!' : ''}${kind.id}`)
  return `@${inverted ? '!' : ''}[${words.join(', ')}]`
}

/** A constant matrix, by columns as GLSL takes it. */
function matrixText(name: string, rows: readonly number[]): string {
  const columns = [0, 1, 2].flatMap((column) => [0, 3, 6].map((row) => rows[row + column].toFixed(16)))
  return `const mat3 ${name} = mat3(${columns.join(', ')});`
}

/** The functions of all kinds, once for a program. */
export function maskFunctions(seen: Set<string>): string[] {
  return [
    resolveIncludes('#include <table>', seen),
    matrixText('maskToLms', workingToLms),
    matrixText('maskRootsToOklab', rootsToOklab),
    resolveIncludes(masks, seen),
  ]
}

export function maskUniformTexts(mask: DescribedMask, index: number): string[] {
  const members = mask.parts.map((_, i) => `vec3 a${i}; vec3 b${i};`)
  const name = `Mask${index}`
  return [
    `struct ${name} {\n  float strength;\n  ${members.join('\n  ')}\n};`,
    `uniform ${name} ${maskUniform(index)};`,
    ...(mask.readsMaterial ? [`uniform highp sampler2D ${materialUniform(index)};`] : []),
  ]
}

/** Statements that leave the weight of the step in `weightName(index)`, from `rgb` as it comes in. */
export function weightText(mask: DescribedMask, index: number): string {
  const weight = weightName(index)
  const material = mask.readsMaterial ? `planeAt(${materialUniform(index)}, pixel.position)` : '0.0'
  const lines = mask.parts.map(({ kind, inverted, combine }, i) => {
    const k = maskUniform(index)
    const inside = `${kind.id}Place(rgb, pixel.position, material${index}, ${k}.a${i}, ${k}.b${i})`
    const part = inverted ? `(1.0 - ${inside})` : inside
    if (i === 0) return `  ${weight} = ${part};`
    if (combine === 'or') return `  ${weight} = mix(${weight}, 1.0, ${part});`
    return `  ${weight} *= ${combine === 'and' ? part : `1.0 - ${part}`};`
  })
  return [
    `  float material${index} = ${material};`,
    `  float ${weight} = 1.0;`,
    ...lines,
    `  ${weight} = ${maskUniform(index)}.strength * ${mask.inverted ? `(1.0 - ${weight})` : weight};`,
  ].join('\n')
}

/** Uniform struct of a mask: its strength and two vectors for each part. */
export function maskNumbers({ parts, strength }: DescribedMask): Record<string, number | readonly number[]> {
  const vectors = parts.flatMap(({ numbers }, i) => [
    [`a${i}`, numbers.slice(0, 3)] as const,
    [`b${i}`, numbers.slice(3)] as const,
  ])
  return { strength, ...Object.fromEntries(vectors) }
}
