// Colour tables on a thread of their own: reading a large one takes a second.
import { expose, transfer } from 'comlink'
import type { ColourTable } from '../luts/colour-table.ts'
import { readLutFile } from '../luts/read-lut-file.ts'

const tableWorker = {
  /** The table in the bytes of a file. @throws Error with a sentence for people */
  read(bytes: Uint8Array, fileName: string): ColourTable {
    const made = readLutFile(bytes, fileName)
    return transfer(made, [made.table.data.buffer])
  },
}
export type TableWorker = typeof tableWorker

expose(tableWorker)
