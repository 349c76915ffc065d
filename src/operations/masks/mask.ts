// Where a step acts: places put together one after the other, as plain data of the step. JSON-safe.
import type { FrameFacts } from '../../frame/frame.ts'
import { planeAt } from '../../math/plane-at.ts'
import type { Pixel, Supplies, Table } from '../define.ts'
import { initialValues, readValues, type Values } from '../values.ts'
import { graduated, radial } from './area-kinds.ts'
import type { MaskKind, PartNumbers } from './mask-kind.ts'
import { foliage, sky } from './material-kinds.ts'
import { hue, level } from './tone-kinds.ts'

/** How a part joins those before it: also there, only there as well, or not there. The first one begins. */
export type Combine = 'or' | 'and' | 'not'

export interface MaskPart {
  readonly kind: string
  readonly values: Values
  readonly inverted: boolean
  readonly combine: Combine
}

export interface StepMask {
  readonly parts: readonly MaskPart[]
  readonly inverted: boolean
  /** How much of the step acts where it acts fully, 0…1. */
  readonly strength: number
}

/** The explicit list of kinds, in the order in which they are offered. */
export const maskKinds: readonly MaskKind[] = [foliage, sky, level, hue, radial, graduated] as readonly MaskKind[]
/** Enough for any place that words describe, few enough for a shader (our choice). */
export const mostParts = 6

/** Name of the supply that foliage and sky are told by, a plane of the frame. */
export const materialPlaneName = 'material'
/** Stands in until the plane is made: all is grey. */
const allGrey: Table = { kind: 'plane', width: 1, height: 1, data: new Float32Array(1) }

/** The kind of an id. Throws a RangeError that names the known ones. */
export function maskKindById(id: string): MaskKind {
  const kind = maskKinds.find((candidate) => candidate.id === id)
  if (kind) return kind
  throw new RangeError(
    `No kind of place is called “${id}” here; known are ${maskKinds.map((known) => known.id).join(', ')}.`,
  )
}

/** A part of a kind with initial values where none are given. */
export function makePart(kind: string, values: Values = {}, combine: Combine = 'or'): MaskPart {
  return { kind, values: { ...initialValues(maskKindById(kind)), ...values }, inverted: false, combine }
}

/** A complete, usable mask from a saved or edited one; null where it limits nothing. Throws a RangeError that says what is wrong. */
export function readMask(saved: StepMask | null | undefined): StepMask | null {
  if (!saved || (saved.parts.length === 0 && saved.strength === 1 && !saved.inverted)) return null
  if (saved.parts.length > mostParts) throw new RangeError(`A step acts on at most ${mostParts} places together.`)
  if (!Number.isFinite(saved.strength)) throw new RangeError('The strength of a step’s places must be a finite number.')
  const parts = saved.parts.map(({ kind, values, inverted, combine }) => ({
    kind,
    values: readValues(maskKindById(kind), values),
    inverted,
    combine,
  }))
  return { parts, inverted: saved.inverted, strength: Math.min(Math.max(saved.strength, 0), 1) }
}

interface DescribedPart {
  readonly kind: MaskKind
  readonly inverted: boolean
  readonly combine: Combine
  readonly numbers: PartNumbers
}

/** A mask worked out for a frame, ready for either engine. */
export interface DescribedMask {
  readonly parts: readonly DescribedPart[]
  readonly inverted: boolean
  readonly strength: number
  readonly readsMaterial: boolean
  readonly material: Table
}

export function describeMask(mask: StepMask, facts: FrameFacts, supplies: Supplies): DescribedMask {
  const parts = mask.parts.map(({ kind: id, values, inverted, combine }) => {
    const kind = maskKindById(id)
    return { kind, inverted, combine, numbers: kind.derive(values as never, facts) }
  })
  const readsMaterial = parts.some(({ kind }) => kind.readsMaterial)
  return { ...mask, parts, readsMaterial, material: supplies[materialPlaneName] ?? allGrey }
}

/** How far the step acts on a pixel as it comes in, 0…1. */
export function maskWeight(mask: DescribedMask, pixel: Pixel): number {
  const { parts, inverted, strength } = mask
  const stops = mask.readsMaterial ? planeAt(mask.material, pixel[4], pixel[5]) : 0
  let whole = parts.length === 0 ? 1 : 0
  for (let i = 0; i < parts.length; i++) {
    const part = parts[i]
    const inside = part.kind.weight(pixel, stops, part.numbers)
    const weight = part.inverted ? 1 - inside : inside
    if (i === 0) whole = weight
    else if (part.combine === 'or') whole += weight - whole * weight
    else whole *= part.combine === 'and' ? weight : 1 - weight
  }
  return strength * (inverted ? 1 - whole : whole)
}
