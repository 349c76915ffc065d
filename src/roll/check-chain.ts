// Holds a chain that was read to what a chain may be: steps brought up to date, in an allowed order, each making finite
// light from finite light. Typed values have no limits, so a number that drowns a picture can only be found by trying it.
import { addStep, type Chain, type Step } from '../edits/stack.ts'
import type { FrameFacts } from '../frame/frame.ts'
import type { Supplies } from '../operations/define.ts'
import { operationById } from '../operations/index.ts'
import { readMask } from '../operations/masks/mask.ts'
import { readValues } from '../operations/values.ts'
import { describe } from '../pipeline/describe.ts'
import { runStep } from '../pipeline/run-step.ts'
import { EditFault } from './edit.ts'

/** A frame of no particular kind to try chains on (our choice). */
const someFacts: FrameFacts = {
  meanCameraRgb: [0.25, 0.18, 0.12],
  referenceNeutral: [0.5, -0.6],
  noise: { fullScaleElectrons: 50_000, readNoiseElectrons: 3 },
  cameraToXyz: null,
  filterNm: 720,
  aspect: 1.5,
}
/** Levels of `cameraRgb` to try: below black, black, mid tones and clipping (our choice). */
const levels = [-0.002, 0, 0.18, 1]

const attempt = <T>(place: string, work: () => T): T => {
  try {
    return work()
  } catch (reason) {
    throw new EditFault(place, (reason as Error).message)
  }
}

function upToDate(step: Step, index: number): Step {
  return attempt(`chain[${index}]`, () => {
    const operation = operationById(step.operation)
    const { mask: saved, ...rest } = step
    const mask = readMask(saved)
    if (mask && operation.place !== 'free') throw new RangeError(`the step “${operation.title}” acts everywhere`)
    const values = readValues(operation, step.values, step.version)
    return { ...rest, version: operation.version, values, ...(mask && { mask }) }
  })
}

/** Steps in an order that a chain may have, none twice that stands once, every id once. */
function checkOrder(chain: Chain): void {
  const ids = new Set(chain.map((step) => step.id))
  if (ids.size < chain.length) throw new RangeError('two steps have the same id')
  let built: Chain = []
  for (const step of chain) built = addStep(built, step.operation, step.values)
  const differs = built.findIndex((step, index) => step.operation !== chain[index].operation)
  if (differs >= 0)
    throw new RangeError(`the step “${operationById(chain[differs].operation).title}” cannot stand there`)
  const last = chain[chain.length - 1]
  if (operationById(last.operation).place !== 'output' || !last.enabled)
    throw new RangeError('its last step must be the output, switched on')
}

/** Whether graphics hardware can hold the number: its floats end at 3.4e38. */
const isHeld = (value: number) => Number.isFinite(Math.fround(value))

/** Runs a few pixels through all steps, also through those that are off, as they may be switched on. */
function checkLight(chain: Chain, supplies: Supplies): void {
  const allOn = chain.map((step) => ({ ...step, enabled: true }))
  const { steps } = attempt('chain', () => describe(allOn, someFacts, { supplies }))
  const pixels = levels.flatMap((red) =>
    levels.flatMap((green) =>
      levels.map((blue) => Float64Array.of(red, green, blue, Math.max(red, green, blue), 0.5, 0.5)),
    ),
  )
  for (const [index, step] of steps.entries()) {
    const { operation, coefficients } = step
    for (const pixel of pixels) runStep(step, pixel)
    const held = Object.values(coefficients)
      .flat()
      .every((value) => typeof value === 'boolean' || isHeld(value))
    if (held && pixels.every((pixel) => pixel.every(isHeld))) continue
    throw new EditFault(`chain[${index}]`, `the values of the step “${operation.title}” are too large for any picture`)
  }
}

/** The chain with its steps up to date. @throws EditFault */
export function checkedChain(read: Chain, supplies: Supplies): Chain {
  const chain = read.map(upToDate)
  attempt('chain', () => checkOrder(chain))
  checkLight(chain, supplies)
  return chain
}
