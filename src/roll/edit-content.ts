// Between an edit and its content: plain JSON with a version, the same in a file and in the browser's database.
// What is read is checked whole and brought up to date, so that no broken value ever reaches a picture.
import { pinnedFirst } from '../edits/marks.ts'
import type { Supplies } from '../operations/define.ts'
import { checkedChain } from './check-chain.ts'
import { type Edit, EditFault, type NamedTable, tableIdsOf } from './edit.ts'
import { currentVersion, type EditContent, parseContent } from './edit-schema.ts'
import { broughtUpToDate } from './edit-versions.ts'
import { readTable, tableContent } from './table-text.ts'

/** The content of an edit without its tables. */
export function contentWithoutTables({ madeOn, filterNm, chain, marks }: Edit): EditContent {
  const steps = structuredClone(chain) as EditContent['chain']
  return { app: 'rimeleaf', version: currentVersion, madeOn, filterNm, chain: steps, marks: [...marks] }
}

export function contentOf(edit: Edit): EditContent {
  const tables = Object.entries(edit.tables).map(([hash, table]) => [hash, tableContent(table)])
  return { ...contentWithoutTables(edit), ...(tables.length > 0 && { tables: Object.fromEntries(tables) }) }
}

function checkMarks({ marks }: EditContent): void {
  if (new Set(marks.map(({ id }) => id)).size < marks.length) throw new EditFault('marks', 'two marks have the same id')
}

/**
 * The edit that some content stands for. Tables that it does not bring along are asked of `lookUp`; a chain opens without
 * one that nobody has. @throws EditFault
 */
export async function readContent(
  unknown: unknown,
  lookUp: (hash: string) => Promise<NamedTable | undefined> = async () => undefined,
): Promise<Edit> {
  const content = parseContent(broughtUpToDate(unknown))
  checkMarks(content)
  const tables: Record<string, NamedTable> = {}
  for (const [hash, text] of Object.entries(content.tables ?? {})) tables[hash] = await readTable(hash, text)
  for (const hash of tableIdsOf(content.chain)) {
    const found = tables[hash] ?? (await lookUp(hash))
    if (found) tables[hash] = found
  }
  const { madeOn, filterNm } = content
  const chain = checkedChain(content.chain, tableSupplies(tables))
  return { filterNm, chain, marks: pinnedFirst(content.marks), tables, ...(madeOn && { madeOn }) }
}

/** Tables under the names that operations ask for. */
export function tableSupplies(tables: Edit['tables']): Supplies {
  return Object.fromEntries(Object.entries(tables).map(([hash, { table }]) => [`lut ${hash}`, table]))
}
