// A colour table file of any kind that is read here, told apart by its content and not by its name.
import { type ColourTable, colourTableOf } from './colour-table.ts'
import type { ColourTransform } from './colour-transform.ts'
import { LutFileError } from './lut-file-error.ts'
import { readClfFile } from './read-clf-file.ts'
import { readCubeFile } from './read-cube-file.ts'

/** Bytes of the largest file that is tried: a cube of 129³ as generously spaced XML takes less (our choice). */
const MOST_BYTES = 256e6

/** UTF-8, or else the Latin letters that old comments and titles were written in; numbers and keywords are the same in both. */
function textOf(bytes: Uint8Array): string {
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes)
  } catch {
    return new TextDecoder('windows-1252').decode(bytes)
  }
}

/** @throws LutFileError */
function transformOf(bytes: Uint8Array, fileName: string): ColourTransform {
  const refuse = (reason: string): never => {
    throw new LutFileError(fileName, null, reason)
  }
  if (bytes.length === 0) return refuse('it is empty')
  if (bytes.length > MOST_BYTES) return refuse(`it is larger than ${MOST_BYTES / 1e6} MB`)
  const text = textOf(bytes)
  return /^\uFEFF?\s*</.test(text) ? readClfFile(text, fileName) : readCubeFile(text, fileName)
}

/**
 * The colour table in the bytes of a `.cube` or CLF file.
 * @throws LutFileError naming file, line and reason
 */
export function readLutFile(bytes: Uint8Array, fileName: string): ColourTable {
  const transform = transformOf(bytes, fileName)
  try {
    return colourTableOf(transform, fileName.replace(/\.[^.]*$/, ''))
  } catch (reason) {
    if (!(reason instanceof RangeError)) throw reason
    throw new LutFileError(fileName, null, reason.message)
  }
}
