// Colour maps as JSON, the same in a file and in the browser's database: names, filters, steps, and the tables that they read.
// What is read is checked whole, on a chain of its own, so that no broken map ever reaches a picture.
import * as v from 'valibot'

import { type ColourMap, isMapping, type MapStep, mappingOf, withMapping } from '../edits/colour-map.ts'
import { addStep, type Chain } from '../edits/stack.ts'
import { operationById } from '../operations/index.ts'
import { checkedChain } from './check-chain.ts'
import { type Edit, EditFault } from './edit.ts'
import { tableSupplies } from './edit-content.ts'
import { cutOnNm, mapStep, placeOf, tables, words } from './edit-schema.ts'
import { readTable, tableContent } from './table-text.ts'

/** Version of this form; operations count versions of their own. */
const currentVersion = 1

const form = v.strictObject({
  app: v.literal('rimeleaf'),
  kind: v.literal('colour maps'),
  version: v.literal(currentVersion),
  maps: v.array(
    v.strictObject({ name: words, words: v.string(), filterNm: v.optional(cutOnNm), steps: v.array(mapStep) }),
  ),
  tables: v.optional(tables),
})

/** A map before it has an id here. */
export type NamelessMap = Omit<ColourMap, 'id'>

/** Content for the database, or with their tables for a file. */
export function mapsContent(maps: readonly ColourMap[], withTables: Edit['tables'] = {}): object {
  const texts = Object.entries(withTables).map(([hash, table]) => [hash, tableContent(table)])
  return {
    app: 'rimeleaf',
    kind: 'colour maps',
    version: currentVersion,
    maps: maps.map(({ name, words: line, filterNm, steps }) => ({ name, words: line, filterNm, steps })),
    ...(texts.length > 0 && { tables: Object.fromEntries(texts) }),
  }
}

/** Ends of names that say what is in a file: edits are JSON as well. */
const nameEnd = '.maps.json'

export const isMapFileName = (fileName: string): boolean => fileName.toLowerCase().endsWith(nameEnd)

/** The name of a file for these maps: of the one, or a general one. */
export function mapFileName(maps: readonly ColourMap[]): string {
  const name = maps.length === 1 ? maps[0].name.replaceAll(/[\\/:*?"<>|]/g, ' ').trim() : 'colour'
  return `${name}${nameEnd}`
}

export const writeMapFile = (maps: readonly ColourMap[], withTables: Edit['tables']): string =>
  `${JSON.stringify(mapsContent(maps, withTables), null, 2)}\n`

/** Steps up to date, or an EditFault that names the place. */
function checkedSteps(steps: readonly MapStep[], index: number, read: Edit['tables']): readonly MapStep[] {
  const place = `maps[${index}].steps`
  const stranger = steps.find((step) => !isMapping(step))
  if (stranger) {
    const { title } = operationById(stranger.operation)
    throw new EditFault(place, `the step “${title}” does not map colours and has no place in a colour map`)
  }
  const bare: Chain = addStep(addStep([], 'neutral'), 'outputTransform')
  return mappingOf(checkedChain(withMapping(bare, steps), tableSupplies(read)))
}

/** The maps that some content stands for, with the tables it brings. @throws EditFault */
export async function readMaps(
  content: unknown,
): Promise<{ readonly maps: readonly NamelessMap[]; readonly tables: Edit['tables'] }> {
  const version = (content as { version?: unknown } | null)?.version
  if (typeof version === 'number' && version > currentVersion)
    throw new EditFault('version', `it was written by a newer Rimeleaf (${version}, known is ${currentVersion})`)
  const parsed = v.safeParse(form, content, { abortEarly: true })
  if (!parsed.success) throw new EditFault(placeOf(parsed.issues[0]), parsed.issues[0].message)
  const read: Record<string, Edit['tables'][string]> = {}
  for (const [hash, text] of Object.entries(parsed.output.tables ?? {})) read[hash] = await readTable(hash, text)
  const maps = parsed.output.maps.map((map, index) => {
    try {
      return { ...map, filterNm: map.filterNm, steps: checkedSteps(map.steps, index, read) }
    } catch (reason) {
      throw reason instanceof EditFault ? reason : new EditFault(`maps[${index}]`, (reason as Error).message)
    }
  })
  return { maps, tables: read }
}

/** The maps in a file's text. @throws Error with one sentence that names the file, the place and the reason */
export async function readMapFile(text: string, fileName: string): ReturnType<typeof readMaps> {
  let content: unknown
  try {
    content = JSON.parse(text)
  } catch (reason) {
    throw new Error(`“${fileName}” holds no colour maps: it is not JSON (${(reason as Error).message}).`, {
      cause: reason,
    })
  }
  try {
    return await readMaps(content)
  } catch (reason) {
    if (!(reason instanceof EditFault)) throw reason
    throw new Error(`“${fileName}” holds no usable colour maps, at ${reason.place}: ${reason.message}`, {
      cause: reason,
    })
  }
}
