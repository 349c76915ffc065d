// An edit: what a person made of one frame, as plain data. It is kept between sessions and leaves as a file in the same form.
// Colour tables travel with it, because a chain only names them by the hash of their content.
import { closed } from '../text/thrown.ts'
import type { Marks } from '../edits/marks.ts'
import type { Chain, Step } from '../edits/stack.ts'
import type { ColourTable } from '../luts/colour-table.ts'
import type { Table } from '../operations/define.ts'

/** A colour table under the name a person knows it by. */
export interface NamedTable {
  readonly name: string
  readonly table: Table
  /** What its file said of it, where it came from one; an edit file does not carry this on. */
  readonly facts?: Pick<ColourTable, 'takes' | 'gives' | 'remarks' | 'sampled'>
}

export interface Edit {
  /** Cut-on wavelength of the filter the chain was made for in nm; null is full spectrum, undefined unknown. */
  readonly filterNm: number | null | undefined
  readonly chain: Chain
  readonly marks: Marks
  /** Tables that the chain reads, by the SHA-256 of their content. */
  readonly tables: Readonly<Record<string, NamedTable>>
  /** The file it was made on, where known: elsewhere the places of its marks mean nothing. */
  readonly madeOn?: { readonly fileName: string; readonly fingerprint: string }
}

const tableId = /^[0-9a-f]{64}$/

/** Hashes of the tables that steps name in their values. */
export function tableIdsOf(steps: readonly Pick<Step, 'values'>[]): string[] {
  const texts = steps.flatMap(({ values }) => Object.values(values)).filter((value) => typeof value === 'string')
  return [...new Set(texts.filter((text) => tableId.test(text)))]
}

/** Thrown where content is no usable edit: the place in it (‘chain[2].values.redStops’) and what is wrong there. */
export class EditFault extends Error {
  readonly place: string

  constructor(place: string, reason: string) {
    super(closed(reason))
    this.place = place
  }
}
