// Why a colour table file cannot be used: file, line and reason in one sentence for people.
import { closed } from '../text/thrown.ts'

export class LutFileError extends Error {
  /** `line` counts from 1; null where the fault is the file's as a whole. */
  constructor(fileName: string, line: number | null, reason: string) {
    const place = line === null ? '' : `, line ${line}`
    super(`${fileName} cannot be used as a colour table${place}: ${closed(reason)}`)
  }
}

/** Refuses with a line and a reason. */
export type Refuse = (line: number | null, reason: string) => never
