// Turns a chain and the facts of its frame into a pipeline description: every coefficient worked out once for both engines.
import type { OutputSpaceId } from '../colour/output-space.ts'
import type { FrameFacts } from '../frame/frame.ts'
import { IDENTITY, type Mat3, multiply } from '../math/mat3.ts'
import type { Coefficients, Supplies } from '../operations/define.ts'
import { operationById } from '../operations/index.ts'
import { describeMask, readMask } from '../operations/masks/mask.ts'
import { openingNeutral } from '../operations/neutral.ts'
import type { Chain, Step } from '../operations/step.ts'
import { readValues, type Values } from '../operations/values.ts'
import { maskStructure } from './mask-text.ts'
import type { DescribedStep, PipelineDescription } from './description.ts'

const shapeOf = (value: Coefficients[string]) =>
  typeof value === 'number' ? 'f' : typeof value === 'boolean' ? 'b' : `f${value.length}`

function structureOf({ operation, coefficients, tables, mask }: DescribedStep): string {
  const scalars = Object.entries(coefficients).map(([name, value]) => `${name}:${shapeOf(value)}`)
  const samplers = Object.entries(tables).map(([name, { kind }]) => `${name}:${kind}`)
  return `${operation.id}(${[...scalars, ...samplers].join(',')})${mask ? maskStructure(mask) : ''}`
}

/** Ratios only, green 1: the neutral step's gains if one is on, else those of the frame's reference neutral. */
function mosaicGains(steps: readonly Step[], facts: FrameFacts): [number, number, number] {
  const step = steps.find(({ operation }) => operation === 'neutral')
  const [redStops, blueStops] = step
    ? [step.values.redStops as number, step.values.blueStops as number]
    : openingNeutral(facts)
  return [2 ** redStops, 1, 2 ** blueStops]
}

interface DescribeOptions {
  /** Overrides the output step's space, for a screen or an export. */
  readonly space?: OutputSpaceId
  readonly supplies?: Supplies
  /** The step whose reach the screen lays over the picture; none where it is not there or acts everywhere alike. */
  readonly reachOf?: string | null
}

const noSupplies: Supplies = {}

/**
 * The description of a chain for a frame.
 * Throws a RangeError when a step cannot be read or when no output step stands last.
 */
export function describe(
  chain: Chain,
  facts: FrameFacts,
  { space, supplies = noSupplies, reachOf = null }: DescribeOptions = {},
): PipelineDescription {
  const enabled = chain
    .filter((step) => step.enabled)
    .map((step) => ({
      ...step,
      values: readValues(operationById(step.operation), step.values, step.version),
      mask: readMask(step.mask) ?? undefined,
    }))
  let toHere: Mat3 = IDENTITY
  const steps: DescribedStep[] = enabled.map((step) => {
    const operation = operationById(step.operation)
    const values: Values = space && operation.place === 'output' ? { ...step.values, space } : step.values
    const coefficients = operation.derive(values, facts, toHere)
    if (operation.linear && !step.mask) toHere = multiply(operation.linear(coefficients), toHere)
    return {
      stepId: step.id,
      operation,
      coefficients,
      tables: operation.tables?.(values, facts, supplies, step.id) ?? {},
      mask: step.mask && describeMask(step.mask, facts, supplies),
    }
  })
  if (steps.at(-1)?.operation.place !== 'output') {
    throw new RangeError('The chain cannot be drawn: its last step must be the output, switched on.')
  }
  const shown = steps.findIndex(
    ({ stepId, operation, mask }) => stepId === reachOf && (mask ?? operation.reach) !== undefined,
  )
  const structures = steps.map(structureOf)
  return {
    structureKey: [...structures, ...(shown < 0 ? [] : [`reach ${shown}`])].join(' '),
    steps,
    shownReach: shown < 0 ? undefined : shown,
    mosaicGains: mosaicGains(enabled, facts),
  }
}
