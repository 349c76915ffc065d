// What is to be known of a colour table, in words: its size, what its file says of it, and what sampling changed.
import { ENCODING_REMARK } from '../../luts/colour-table.ts'
import type { KnownTable } from '../../workbench/session.ts'

/** Lines of a file's own words that are shown: what it takes and gives comes first, where it says so. */
const shownRemarks = 2

/** A share of the table's range, to two digits: "0.04 %". */
const share = (value: number) => `${Number((value * 100).toPrecision(2))} %`

const isEnd = (line: string) => /^Takes(?::| and gives) |^Gives: /.test(line)

function remarksOf(remarks: readonly string[], isDeclared: boolean): string[] {
  const others = remarks.filter((line) => line !== '' && !isEnd(line) && !line.startsWith(ENCODING_REMARK))
  // A declared encoding stands among the controls.
  return [...(isDeclared ? [] : remarks.filter(isEnd)), ...others].slice(0, shownRemarks)
}

export function tableWords(table: KnownTable): string[] {
  const { kind, size, facts } = table
  const shape = kind === '3d' ? `A cube of ${size} points a side.` : `A line of ${size} points for each channel.`
  const sampled =
    facts?.sampled &&
    `It was sampled from a larger or finer file and differs from it by ${share(facts.sampled.mean)} of its range in the mean, at most by ${share(facts.sampled.largest)}.`
  const remarks = facts?.remarks ?? []
  const isDeclared = remarks.some((line) => line.startsWith(ENCODING_REMARK))
  const isUnsaid = facts !== undefined && !isDeclared && !remarks.some(isEnd) && facts.takes !== 'acescct'
  return [
    shape,
    ...(sampled ? [sampled] : []),
    ...remarksOf(remarks, isDeclared).map((line) => `“${line.slice(0, 120)}”`),
    ...(isUnsaid ? ['Its file does not say which numbers it takes and gives: choose what it was made for.'] : []),
  ]
}
