// The shape of an edit's content in its current version. Unknown keys are refused: a step's mask or a mark's place that was
// passed by in silence would give another picture than the one that was saved.
import * as v from 'valibot'
import { EditFault } from './edit.ts'

const number = v.pipe(v.number(), v.finite())
/** Values of a step's controls. */
const values = v.record(v.string(), v.union([number, v.boolean(), v.string(), v.array(number)]))
/** A cut-on in nm, null for full spectrum. */
export const cutOnNm = v.nullable(v.pipe(number, v.minValue(1)))
const share = v.pipe(number, v.minValue(0), v.maxValue(1))
export const words = v.pipe(v.string(), v.minLength(1))
const hash = v.pipe(v.string(), v.regex(/^[0-9a-f]{64}$/, 'it must be a SHA-256 in 64 hexadecimal digits'))
const numbered = (letters: RegExp, example: string) =>
  v.pipe(v.string(), v.regex(letters, `it must be built like “${example}”`))

const mask = v.strictObject({
  parts: v.array(
    v.strictObject({ kind: v.string(), values, inverted: v.boolean(), combine: v.picklist(['or', 'and', 'not']) }),
  ),
  inverted: v.boolean(),
  strength: share,
})

/** A step without the id that it has in one chain only. */
const stepEntries = {
  operation: v.string(),
  version: v.pipe(v.number(), v.integer(), v.minValue(1)),
  enabled: v.boolean(),
  values,
}
export const mapStep = v.strictObject(stepEntries)
const step = v.strictObject({
  id: numbered(/^[A-Za-z][A-Za-z0-9]*-\d{1,9}$/, 'hueTurn-1'),
  ...stepEntries,
  mask: v.optional(mask),
})

const mark = v.strictObject({
  id: numbered(/^m\d{1,9}$/, 'm1'),
  name: words,
  place: v.nullable(v.strictObject({ x: share, y: share })),
  gains: v.strictObject({ redStops: number, blueStops: number }),
  pinned: v.boolean(),
})

const table = v.strictObject({
  name: v.string(),
  kind: v.picklist(['1d', '3d']),
  size: v.pipe(v.number(), v.integer(), v.minValue(2), v.maxValue(65536)),
  data: v.string(),
})

/** Colour tables by the hash of their content. */
export const tables = v.record(hash, table)

/** The newest version of an edit's content; operations count versions of their own. */
export const currentVersion = 2

const content = v.strictObject({
  app: v.literal('rimeleaf'),
  version: v.literal(currentVersion),
  madeOn: v.optional(v.strictObject({ fileName: words, fingerprint: hash })),
  filterNm: v.optional(cutOnNm),
  chain: v.pipe(v.array(step), v.minLength(1)),
  marks: v.array(mark),
  tables: v.optional(tables),
})

export type EditContent = v.InferOutput<typeof content>
export type TableContent = v.InferOutput<typeof table>

/** ‘chain[2].values.redStops’. */
export function placeOf(issue: v.BaseIssue<unknown>): string {
  const keys = (issue.path ?? []).map(({ key }) => (typeof key === 'number' ? `[${key}]` : `.${String(key)}`))
  return keys.join('').replace(/^\./, '') || 'the whole file'
}

/** Content in the current version, held to its shape. @throws EditFault */
export function parseContent(unknown: unknown): EditContent {
  const parsed = v.safeParse(content, unknown, { abortEarly: true })
  if (parsed.success) return parsed.output
  const [issue] = parsed.issues
  throw new EditFault(placeOf(issue), issue.message)
}
