// Which planes over the frame a chain reads, and how each is made from the frame's overview. The page makes them in a worker and
// the command line at once, both from here, so that a picture never depends on who made it.
import { graduatedMask } from '../analysis/two-lights/graduated-mask.ts'
import { type LightMark, lightMarkOf } from '../analysis/two-lights/light-marks.ts'
import { lightCells } from '../analysis/two-lights/light-plane.ts'
import { correctShade, type JudgedShade, judgeShade, type Mask } from '../analysis/two-lights/shade-mask.ts'
import { type Stroke, strokesOfNumbers } from '../analysis/two-lights/strokes.ts'
import { skyWithout } from '../analysis/sky-places.ts'
import { materialPlane, skyShare } from '../analysis/material-plane.ts'
import { suggestNeutrals } from '../analysis/candidates/suggest-neutrals.ts'
import { makeCellGrid } from '../frame/cell-grid.ts'
import type { Frame, FrameFacts, Overview } from '../frame/frame.ts'
import { cellPhotosites } from '../frame/frame-facts.ts'
import { maskKindById, materialPlaneName } from '../operations/masks/mask.ts'
import type { Supplies, Table } from '../operations/define.ts'
import { secondLight, shadePlane } from '../operations/second-light.ts'
import type { Chain, Step } from '../operations/step.ts'
import { readValues } from '../operations/values.ts'

type Making =
  | {
      readonly kind: 'found shade'
      readonly sun: LightMark
      readonly shade: LightMark
      /** Where the shade was picked, x and y 0…1. */
      readonly shadePlace: readonly [x: number, y: number]
      readonly strokes: readonly Stroke[]
    }
  | { readonly kind: 'material' }
  | { readonly kind: 'graduated shade'; readonly ends: readonly number[]; readonly strokes: readonly Stroke[] }

/** What planes are made of: plain data for a worker. */
export interface PlaneSource extends Pick<FrameFacts, 'noise' | 'referenceNeutral'> {
  readonly overview: Overview
  /** Photosites of red that one overview pixel averages. */
  readonly photosites: number
}

export function planeSource({ sensor, overview, facts }: Pick<Frame, 'sensor' | 'overview' | 'facts'>): PlaneSource {
  const { noise, referenceNeutral } = facts
  return { overview, noise, referenceNeutral, photosites: cellPhotosites(sensor, overview) }
}

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
  if (!inSun || !inShade) return { name, making: null }
  const [x, y] = shade
  return { name, making: { kind: 'found shade', sun: inSun, shade: inShade, shadePlace: [x, y], strokes } }
}

const readsMaterial = ({ mask }: Step) => mask?.parts.some(({ kind }) => maskKindById(kind).readsMaterial) ?? false

/** The planes that the chain's enabled steps read. Throws a RangeError for a step that cannot be read. */
export function planesOfChain(chain: Chain): PlaneOrder[] {
  const enabled = chain.filter((step) => step.enabled)
  const shades = enabled.filter(({ operation }) => operation === secondLight.id).map(shadeOrder)
  const material: PlaneOrder = { name: materialPlaneName, making: { kind: 'material' } }
  return enabled.some(readsMaterial) ? [...shades, material] : shades
}

/** log2 R/B of the frame's grey: what is suggested first, else what it averages to. */
function greyStops({ overview, noise, referenceNeutral, photosites }: PlaneSource): number {
  const [first] = suggestNeutrals(makeCellGrid(overview, noise, photosites), noise).neutrals
  return first ? first.u - first.v : referenceNeutral[0] - referenceNeutral[1]
}

/** log2 R/B from sun to shade below which no infrared filter can have been there, in stops: then sky is bluer than grey (our choice; the demo garden has −.5). */
const surelyBluerStops = -0.2

type FoundShade = Extract<Making, { kind: 'found shade' }>

function judge({ sun, shade, shadePlace }: FoundShade, source: PlaneSource): JudgedShade | null {
  const { overview } = source
  const redderStops = shade[0] - shade[1] - (sun[0] - sun[1])
  const sky = (shadeLevel: number) => {
    const known: LightMark = [shade[0], shade[1], shadeLevel]
    const share = skyShare(source, greyStops(source), redderStops >= surelyBluerStops, known)
    return skyWithout(share, overview.width, overview.height, shadePlace)
  }
  return judgeShade({ overview, sun, shade, sky })
}

/** The shade that was judged last of a frame: strokes of a brush come by the dozen on one pair of picks. */
const judged = new WeakMap<Overview, { readonly of: string; readonly shade: JudgedShade | null }>()

function foundShade(making: FoundShade, source: PlaneSource): Mask | null {
  const of = JSON.stringify([making.sun, making.shade, making.shadePlace])
  const known = judged.get(source.overview)
  const shade = known?.of === of ? known.shade : judge(making, source)
  judged.set(source.overview, { of, shade })
  return shade && correctShade(shade, making.strokes)
}

function graduatedShade({ ends, strokes }: Extract<Making, { kind: 'graduated shade' }>, overview: Overview): Mask {
  const [fromX, fromY, toX, toY] = ends
  const { width, height } = lightCells(overview)
  return graduatedMask({
    width,
    height,
    sunEnds: [fromX, fromY],
    shadeBegins: [toX, toY],
    strokes,
  })
}

/** The plane, or null where there is nothing to make: a pick is missing, or both are in one light. */
export function makePlane({ making }: PlaneOrder, source: PlaneSource): Table | null {
  if (!making) return null
  const { overview } = source
  if (making.kind === 'material') return { kind: 'plane', ...materialPlane(source, greyStops(source)) }
  const mask = making.kind === 'found shade' ? foundShade(making, source) : graduatedShade(making, overview)
  return mask && { kind: 'plane', width: mask.width, height: mask.height, data: mask.plane }
}

/** All planes of a chain at once. */
export function suppliesOf(chain: Chain, source: PlaneSource): Supplies {
  const made = planesOfChain(chain).map((order) => [order.name, makePlane(order, source)] as const)
  return Object.fromEntries(made.filter((entry): entry is [string, Table] => entry[1] !== null))
}
