// The explicit list of operations, in the order in which colour usually flows. An operation exists when it stands here.
import type { Operation } from './define.ts'
import { blackAndWhite } from './black-and-white.ts'
import { channelMix } from './channel-mix.ts'
import { colourStrength } from './colour-strength.ts'
import { colourLut } from './colour-lut.ts'
import { exposureContrast } from './exposure-contrast.ts'
import { hueBands } from './hue-bands.ts'
import { hueTurn } from './hue-turn.ts'
import { infraredSplit } from './infrared-split.ts'
import { neutral } from './neutral.ts'
import { outputTransform } from './output-transform.ts'
import { secondLight } from './second-light.ts'
import { visibleMatrix } from './visible-matrix.ts'
import { tonalBalance } from './tonal-balance.ts'
import { toneCurve } from './tone-curve.ts'

/** Each operation under its id, with its own control and coefficient types. */
const byId = {
  neutral,
  secondLight,
  visibleMatrix,
  infraredSplit,
  channelMix,
  hueTurn,
  hueBands,
  colourStrength,
  colourLut,
  exposureContrast,
  tonalBalance,
  toneCurve,
  blackAndWhite,
  outputTransform,
}
type OperationsById = typeof byId
export type OperationId = keyof OperationsById

export const operations: readonly Operation[] = Object.values(byId)

/** The operation of an id, fully typed for a literal id. Throws a RangeError that names the known ones. */
export function operationById<Id extends OperationId>(id: Id): OperationsById[Id]
export function operationById(id: string): Operation
export function operationById(id: string): Operation {
  const operation = operations.find((candidate) => candidate.id === id)
  if (operation) return operation
  const known = operations.map((candidate) => candidate.id).join(', ')
  throw new RangeError(
    `No operation is called “${id}” here; known are ${known}. The edit may come from a newer version.`,
  )
}
