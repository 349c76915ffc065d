// The edit stack of a frame: changes to a chain as pure functions that keep every step in its place and its values usable.
// The neutral is first because its gains act on sensor channels, a second light right behind it for the same reason, the output
// last because it leaves linear light.
import type { Operation } from '../operations/define.ts'
import { operationById, operations } from '../operations/index.ts'
import type { Chain, Step } from '../operations/step.ts'
import { readMask, type StepMask } from '../operations/masks/mask.ts'
import { readValues, type Values } from '../operations/values.ts'

export type { Chain, Step } from '../operations/step.ts'

/** Gains in stops relative to green that the probe or a mark proposes. */
export interface Probe {
  readonly redStops: number
  readonly blueStops: number
}

const placeOf = (step: Step) => operationById(step.operation).place

function stepIndex(chain: Chain, stepId: string): number {
  const index = chain.findIndex((step) => step.id === stepId)
  if (index < 0) throw new RangeError(`The chain has no step “${stepId}”.`)
  return index
}

/** First and one-past-last index at which a free step may stand, in a chain without that step. */
function freeRange(chain: Chain): [first: number, end: number] {
  const first = chain.filter((step) => ['neutral', 'light'].includes(placeOf(step))).length
  return [first, chain.length - chain.filter((step) => placeOf(step) === 'output').length]
}

/** A step of an operation with initial values where none are given; its id is unused in `chain`. Throws on unusable values. */
function makeStep(chain: Chain, operationId: string, values: Values = {}): Step {
  const operation = operationById(operationId)
  const used = chain
    .filter((step) => step.id.startsWith(`${operationId}-`))
    .map((step) => Number(step.id.split('-')[1]))
  const id = `${operationId}-${Math.max(0, ...used) + 1}`
  return {
    id,
    operation: operationId,
    version: operation.version,
    enabled: true,
    values: readValues(operation, values),
  }
}

/**
 * The chain with a new step: a free one at `index` or else just before the output, the neutral first, a second light behind it,
 * the output last. Throws a RangeError where there is one already of those that stand once, or for unusable values.
 */
export function addStep(chain: Chain, operationId: string, values: Values = {}, index = Infinity): Chain {
  const step = makeStep(chain, operationId, values)
  const place = placeOf(step)
  if (place !== 'free' && chain.some((other) => placeOf(other) === place)) {
    throw new RangeError(`A chain holds only one step “${operationById(operationId).title}”.`)
  }
  const [first, end] = freeRange(chain)
  const places = { neutral: 0, light: first, free: Math.min(Math.max(index, first), end), output: chain.length }
  return chain.toSpliced(places[place], 0, step)
}

/** Where a step of this operation usually stands: behind all those that colour usually meets no later than it. */
export function usualIndex(chain: Chain, operationId: string): number {
  const order = operations.map(({ id }) => id)
  const place = order.indexOf(operationId)
  return chain.findLastIndex((step) => order.indexOf(step.operation) <= place) + 1
}

/** Whether the chain can take a step of this operation: some stand once, some are there from the beginning. */
export function mayAdd(chain: Chain, { place }: Operation): boolean {
  return place === 'free' || (place === 'light' && !chain.some((step) => placeOf(step) === 'light'))
}

/** Whether a step may leave the chain by hand: the neutral and the output stay. */
export function isRemovable(step: Step): boolean {
  return ['light', 'free'].includes(placeOf(step))
}

/** Whether a step may be moved: those that the chain begins and ends with stay where they are. */
export function isFree(step: Step): boolean {
  return placeOf(step) === 'free'
}

/** The chain with a free step moved to `index`, held between neutral and output; a pinned step leaves the chain as it is. */
export function moveStep(chain: Chain, stepId: string, index: number): Chain {
  const from = stepIndex(chain, stepId)
  const step = chain[from]
  if (!isFree(step)) return chain
  const others = chain.toSpliced(from, 1)
  const [first, end] = freeRange(others)
  const at = Math.min(Math.max(index, first), end)
  return at === from ? chain : others.toSpliced(at, 0, step)
}

/** The chain without a step. Throws a RangeError for the output, without which nothing can be drawn. */
export function removeStep(chain: Chain, stepId: string): Chain {
  const index = stepIndex(chain, stepId)
  if (placeOf(chain[index]) === 'output')
    throw new RangeError('The output step cannot be removed: it makes the picture visible.')
  return chain.toSpliced(index, 1)
}

/** The chain with a step switched on or off. Throws a RangeError when the output is to be switched off. */
export function setEnabled(chain: Chain, stepId: string, enabled: boolean): Chain {
  const index = stepIndex(chain, stepId)
  const step = chain[index]
  if (!enabled && placeOf(step) === 'output')
    throw new RangeError('The output step cannot be switched off: it makes the picture visible.')
  return step.enabled === enabled ? chain : chain.with(index, { ...step, enabled })
}

/** The chain with some values of a step replaced, bounded ones clamped. Throws a RangeError on unusable values. */
export function setValues(chain: Chain, stepId: string, changes: Values): Chain {
  const index = stepIndex(chain, stepId)
  const step = chain[index]
  const operation = operationById(step.operation)
  const values = readValues(operation, { ...readValues(operation, step.values, step.version), ...changes })
  return chain.with(index, { ...step, version: operation.version, values })
}

/** The chain with other places for a step to act in, null for everywhere. Throws a RangeError for one that acts everywhere always. */
export function setMask(chain: Chain, stepId: string, mask: StepMask | null): Chain {
  const index = stepIndex(chain, stepId)
  if (!isFree(chain[index])) throw new RangeError(`The step “${stepId}” acts everywhere.`)
  const { mask: _before, ...step } = chain[index]
  const read = readMask(mask)
  return chain.with(index, read ? { ...step, mask: read } : step)
}

/**
 * The chain as it would be with the probe's neutral: the neutral step switched on with these gains, made if missing.
 * Committing a probe is this same function put into history, so that the picture cannot change on commit.
 */
export function withProbe(chain: Chain, probe: Probe | null): Chain {
  if (!probe) return chain
  const step = chain.find((candidate) => placeOf(candidate) === 'neutral')
  const gains = { redStops: probe.redStops, blueStops: probe.blueStops }
  if (!step) return addStep(chain, 'neutral', gains)
  return setValues(setEnabled(chain, step.id, true), step.id, gains)
}

/** Gains of the neutral step; null where the chain has none or it is switched off. */
export function neutralGains(chain: Chain): Probe | null {
  const step = chain.find((candidate) => placeOf(candidate) === 'neutral')
  if (!step?.enabled) return null
  return { redStops: Number(step.values.redStops), blueStops: Number(step.values.blueStops) }
}
