// Which planes over the frame a chain reads, and how each is made from the frame's overview. The page makes them in a worker and
// the command line at once, both from here, so that a picture never depends on who made it.
import { graduatedMask } from '../analysis/two-lights/graduated-mask.ts'
import { type LightMark, lightMarkOf } from '../analysis/two-lights/light-marks.ts'
import { cellStep } from '../analysis/two-lights/light-plane.ts'
import { type Mask, shadeMask } from '../analysis/two-lights/shade-mask.ts'
import { type Stroke, strokesOfNumbers } from '../analysis/two-lights/strokes.ts'
import type { Overview } from '../frame/frame.ts'
import type { Supplies, Table } from '../operations/define.ts'
import { secondLight, shadePlane } from '../operations/second-light.ts'
import type { Chain, Step } from '../operations/step.ts'
import { readValues } from '../operations/values.ts'

type Making =
  | {
      readonly kind: 'found shade'
      readonly sun: LightMark
      readonly shade: LightMark
      readonly strokes: readonly Stroke[]
    }
  | { readonly kind: 'graduated shade'; readonly ends: readonly number[]; readonly strokes: readonly Stroke[] }

/** A plane by the name under which the chain reads it. Plain data: equal orders make equal planes of one frame. */
export interface PlaneOrder {
  readonly name: string
  /** Null where the step acts nowhere yet. */
  readonly making: Making | null
}

function shadeOrder(step: Step): PlaneOrder {
  const { way, sun, shade, ends, strokes: numbers } = readValues(secondLight, step.values, step.version)
  const name = shadePlane(step.id)
  const strokes = strokesOfNumbers(numbers)
  if (way === 'graduated') return { name, making: { kind: 'graduated shade', ends, strokes } }
  const [inSun, inShade] = [lightMarkOf(sun), lightMarkOf(shade)]
  return { name, making: inSun && inShade ? { kind: 'found shade', sun: inSun, shade: inShade, strokes } : null }
}

/** The planes that the chain's enabled steps read. Throws a RangeError for a step that cannot be read. */
export function planesOfChain(chain: Chain): PlaneOrder[] {
  return chain.filter((step) => step.enabled && step.operation === secondLight.id).map(shadeOrder)
}

function makeMask(making: Making | null, overview: Overview): Mask | null {
  if (!making) return null
  if (making.kind === 'found shade') return shadeMask({ ...making, overview })
  const [fromX, fromY, toX, toY] = making.ends
  const step = cellStep(overview)
  return graduatedMask({
    width: Math.max(1, Math.floor(overview.width / step)),
    height: Math.max(1, Math.floor(overview.height / step)),
    sunEnds: [fromX, fromY],
    shadeBegins: [toX, toY],
    strokes: making.strokes,
  })
}

/** The plane, or null where there is nothing to make: a pick is missing, or both are in one light. */
export function makePlane({ making }: PlaneOrder, overview: Overview): Table | null {
  const mask = makeMask(making, overview)
  return mask && { kind: 'plane', width: mask.width, height: mask.height, data: mask.plane }
}

/** All planes of a chain at once. */
export function suppliesOf(chain: Chain, overview: Overview): Supplies {
  const made = planesOfChain(chain).map((order) => [order.name, makePlane(order, overview)] as const)
  return Object.fromEntries(made.filter((entry): entry is [string, Table] => entry[1] !== null))
}
