// A pipeline description: a chain with all coefficients worked out, ready for either engine. Pure data.
import type { Coefficients, Operation, Tables } from '../operations/define.ts'
import type { DescribedMask } from '../operations/masks/mask.ts'

export interface DescribedStep {
  readonly stepId: string
  readonly operation: Operation
  readonly coefficients: Coefficients
  readonly tables: Tables
  /** Where it acts; everywhere without one. */
  readonly mask?: DescribedMask
}

export interface PipelineDescription {
  /** Operation ids, coefficient shapes and kinds of masks in order: equal keys share one compiled program. */
  readonly structureKey: string
  /** Enabled steps only, sensor to output; the last one ends in encoded `displayRgb` 0…1. */
  readonly steps: readonly DescribedStep[]
  /** Place among the steps of the one whose reach is laid over the picture; for the screen only, the reference engine draws none. */
  readonly shownReach?: number
  /** Gains R, G, B that equalise the mosaic while demosaicing; the neutral step applies them to the picture. */
  readonly mosaicGains: readonly [number, number, number]
}
