// Colour tables on a thread of their own: reading a large one or making one of a chain takes a second.
import { expose, transfer } from 'comlink'
import { tableFile, type TableFile, type TableFileSettings } from '../export/table-file.ts'
import type { FrameFacts } from '../frame/frame.ts'
import type { ColourTable } from '../luts/colour-table.ts'
import { readLutFile } from '../luts/read-lut-file.ts'
import type { Supplies } from '../operations/define.ts'
import type { Chain } from '../operations/step.ts'
import { describe } from '../pipeline/describe.ts'

export interface BakeOrder {
  readonly chain: Chain
  readonly facts: FrameFacts
  readonly supplies: Supplies
  readonly settings: TableFileSettings
  /** Some of the frame's, six numbers each. */
  readonly pixels: Float64Array
}

const tableWorker = {
  /** The table in the bytes of a file. @throws Error with a sentence for people */
  read(bytes: Uint8Array, fileName: string): ColourTable {
    const made = readLutFile(bytes, fileName)
    return transfer(made, [made.table.data.buffer])
  },
  /** The file that some steps of a chain leave as. @throws Error with a sentence for people */
  bake({ chain, facts, supplies, settings, pixels }: BakeOrder): TableFile {
    return tableFile(describe(chain, facts, { supplies }), settings, pixels)
  },
}
export type TableWorker = typeof tableWorker

expose(tableWorker)
