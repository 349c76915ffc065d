// One use of an operation as plain data, and the chain of them that the user sees, from sensor to output. JSON-safe.
import type { StepMask } from './masks/mask.ts'
import type { Values } from './values.ts'

/** One entry of the edit stack, made by an operation. */
export interface Step {
  /** Unique within the chain, stable across edits. */
  readonly id: string
  readonly operation: string
  readonly version: number
  readonly enabled: boolean
  readonly values: Values
  /** Where it acts; everywhere without one. */
  readonly mask?: StepMask
}
export type Chain = readonly Step[]
