// The edit stack of a frame as plain data: the chain is what the user sees, from sensor to output. Pure, JSON-safe.
import type { ControlValue } from '../operations/define.ts'

/** One entry of the edit stack, made by an operation. */
export interface Step {
  /** Unique within the chain, stable across edits. */
  readonly id: string
  readonly operation: string
  readonly version: number
  readonly enabled: boolean
  readonly values: Readonly<Record<string, ControlValue>>
}
export type Chain = readonly Step[]
