// An edit file: the chain of one take as JSON, to be kept beside the photographs or carried to other frames.
// What is read is checked whole and brought up to date, so that no broken value ever reaches a picture.
import * as v from 'valibot'
import { addStep, type Chain, type Step } from '../edits/stack.ts'
import { operationById } from '../operations/index.ts'
import { readValues } from '../operations/values.ts'

/** Version of the file's own shape; operations count versions of their own. */
const fileVersion = 1

const count = v.pipe(v.number(), v.integer(), v.minValue(1))
const number = v.pipe(v.number(), v.finite())

const stepSchema = v.strictObject({
  id: v.pipe(v.string(), v.minLength(1)),
  operation: v.string(),
  version: count,
  enabled: v.boolean(),
  values: v.record(v.string(), v.union([number, v.boolean(), v.string(), v.array(number)])),
})

const fileSchema = v.strictObject({
  version: v.literal(fileVersion),
  app: v.literal('rimeleaf'),
  filterNm: v.optional(v.nullable(v.pipe(number, v.minValue(1)))),
  chain: v.pipe(v.array(stepSchema), v.minLength(1)),
})

export interface Edit {
  /** Cut-on wavelength of the filter the chain was made for; null is full spectrum, undefined unknown. */
  readonly filterNm: number | null | undefined
  readonly chain: Chain
}

/** Thrown where a file cannot be used; the message names file, place and reason. */
export class EditFileError extends Error {}

/** Text of an edit file. */
export function writeEditFile({ filterNm, chain }: Edit): string {
  return `${JSON.stringify({ version: fileVersion, app: 'rimeleaf', filterNm, chain }, null, 2)}\n`
}

/** ‘chain[2].values.redStops’. */
function place(issue: v.BaseIssue<unknown>): string {
  const keys = (issue.path ?? []).map(({ key }) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
  return keys.join('').replace(/^\./, '') || 'the whole file'
}

function upToDate(step: Step): Step {
  const operation = operationById(step.operation)
  return { ...step, version: operation.version, values: readValues(operation, step.values, step.version) }
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

/**
 * The edit in a file's text, its steps brought up to date.
 * @throws EditFileError naming `fileName`, the place in it and what is wrong there
 */
export function readEditFile(text: string, fileName: string): Edit {
  const fail = (where: string, reason: string): never => {
    throw new EditFileError(`${fileName} cannot be used as an edit file, at ${where}: ${reason.replace(/\.?$/, '.')}`)
  }
  let content: unknown
  try {
    content = JSON.parse(text)
  } catch (reason) {
    return fail('the whole file', `it is not JSON (${(reason as Error).message})`)
  }
  const version = (content as { version?: unknown } | null)?.version
  if (typeof version === 'number' && version > fileVersion)
    return fail(
      'version',
      `it was written by a newer Rimeleaf (${version}, known is ${fileVersion}): update to open it`,
    )

  const parsed = v.safeParse(fileSchema, content, { abortEarly: true })
  if (!parsed.success) return fail(place(parsed.issues[0]), parsed.issues[0].message)

  const chain = parsed.output.chain.map((step, index) => {
    try {
      return upToDate(step)
    } catch (reason) {
      return fail(`chain[${index}]`, (reason as Error).message)
    }
  })
  try {
    checkOrder(chain)
  } catch (reason) {
    return fail('chain', (reason as Error).message)
  }
  return { filterNm: parsed.output.filterNm, chain }
}
