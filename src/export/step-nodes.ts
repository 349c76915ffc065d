// Steps as nodes of a CLF file on linear light: exactly where a step is a matrix or a few curves, else sampled in a cube behind
// the ACEScct curve. Steps that are sampled side by side share one cube.
import { TABLE_ENCODINGS } from '../colour/table-encoding.ts'
import { bakeCube } from '../luts/bake-cube.ts'
import type { TransformNode } from '../luts/colour-transform.ts'
import { ACESCCT_LOG } from '../luts/log-curve.ts'
import { diagonal } from '../math/mat3.ts'
import type { Coefficients } from '../operations/define.ts'
import type { DescribedStep } from '../pipeline/description.ts'
import { pointwiseMap } from '../pipeline/pointwise-map.ts'

const matrixNode = (matrix: readonly number[]): TransformNode => ({ kind: 'matrix', matrix, offset: [0, 0, 0] })
const three = <T>(one: T) => [one, one, one] as const
const logNode = (direction: 'encode' | 'decode'): TransformNode => ({
  kind: 'log',
  direction,
  curves: three(ACESCCT_LOG),
})
/** Cube or cube root that keeps the sign. */
const cubicNode = (direction: 'forward' | 'reverse'): TransformNode => ({
  kind: 'exponent',
  direction,
  hasLine: false,
  negatives: 'mirror',
  curves: three({ exponent: 3, offset: 0 }),
})

/** Nodes of steps that a few nodes say exactly, by operation; null where the values make it bend otherwise. */
const exactly: Readonly<Record<string, (k: Coefficients) => TransformNode[] | null>> = {
  hueTurn: ({ toLms, turn, fromLms }) => [
    matrixNode(toLms as readonly number[]),
    cubicNode('reverse'),
    matrixNode(turn as readonly number[]),
    cubicNode('forward'),
    matrixNode(fromLms as readonly number[]),
  ],
  exposureContrast: ({ exposureGain, contrastPower, bent }) =>
    contrastPower === 0 && !bent ? [matrixNode(diagonal(three(exposureGain as number)))] : null,
}

function exactNodes({ operation, coefficients, mask }: DescribedStep): TransformNode[] | null {
  if (mask) return null
  if (operation.linear) return [matrixNode(operation.linear(coefficients))]
  return exactly[operation.id]?.(coefficients) ?? null
}

/** Whether a CLF file holds a step as it is, without sampling. */
export function isExact(step: DescribedStep): boolean {
  return exactNodes(step) !== null
}

/** Nodes of pointwise steps: linear `workingRgb` in and out. Cubes have `size` points a side. */
export function stepNodes(steps: readonly DescribedStep[], size: number): TransformNode[] {
  const nodes: TransformNode[] = []
  let waiting: DescribedStep[] = []
  const bakeWaiting = () => {
    if (waiting.length === 0) return
    const data = bakeCube(size, TABLE_ENCODINGS.acescct, pointwiseMap(waiting))
    nodes.push(logNode('encode'), { kind: 'cube', size, reading: 'tetrahedral', data }, logNode('decode'))
    waiting = []
  }
  for (const step of steps) {
    const exact = exactNodes(step)
    if (exact) {
      bakeWaiting()
      nodes.push(...exact)
    } else waiting.push(step)
  }
  bakeWaiting()
  return nodes
}
