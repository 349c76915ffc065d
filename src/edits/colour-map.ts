// A colour map: a named run of mapping steps with the filter it was made for. Pure data, JSON-safe. It says what becomes of colours,
// never of neutral, light or tone, so that it can be laid on any frame and taken off again.
import type { OperationId } from '../operations/index.ts'
import type { Step } from '../operations/step.ts'
import { addStep, type Chain, setEnabled, usualIndex } from './stack.ts'

/** A step of a map: no id of its own until it stands in a chain, and no mask, which belongs to one frame. */
export type MapStep = Omit<Step, 'id' | 'mask'>

export interface ColourMap {
  readonly id: string
  readonly name: string
  /** One line on what it does, or empty. */
  readonly words: string
  /** Cut-on of the filter it was made for in nm; null is full spectrum, undefined any. */
  readonly filterNm: number | null | undefined
  /** In the order of the chain. */
  readonly steps: readonly MapStep[]
}

const MAPPING: readonly OperationId[] = [
  'visibleMatrix',
  'infraredSplit',
  'channelMix',
  'hueTurn',
  'hueBands',
  'colourStrength',
  'colourLut',
]

/** Whether a step says what becomes of colours all over the frame; one with a mask is work on a part of it and stays there. */
export function isMapping({ operation, mask }: Pick<Step, 'operation' | 'mask'>): boolean {
  return !mask && (MAPPING as readonly string[]).includes(operation)
}

/** The mapping steps of a chain, as a map holds them. */
export function mappingOf(chain: Chain): readonly MapStep[] {
  return chain
    .filter(isMapping)
    .map(({ operation, version, enabled, values }) => ({ operation, version, enabled, values }))
}

/**
 * The chain with its mapping steps replaced by those of a map, in the place of the first one, or where a map's first step usually
 * stands. What stands between mapping steps keeps its order behind them. Throws a RangeError for steps that cannot be used.
 */
export function withMapping(chain: Chain, steps: readonly MapStep[]): Chain {
  const first = chain.findIndex(isMapping)
  const others = chain.filter((step) => !isMapping(step))
  const start = first >= 0 ? first : steps.length > 0 ? usualIndex(others, steps[0].operation) : 0
  return steps.reduce<Chain>((built, { operation, values, enabled }, i) => {
    const next = addStep(built, operation, values, start + i)
    const added = next.find(({ id }) => built.every((step) => step.id !== id))!
    return enabled ? next : setEnabled(next, added.id, false)
  }, others)
}

/** Whether the chain's mapping is this one, value for value. */
export function hasMapping(chain: Chain, steps: readonly MapStep[]): boolean {
  const own = mappingOf(chain)
  return own.length === steps.length && JSON.stringify(own) === JSON.stringify(mappingOf(withMapping(chain, steps)))
}
