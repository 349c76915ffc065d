// Colour tables on a thread of their own: reading a large one or making one of a chain takes a second.
import { expose, transfer } from 'comlink'
import { tableFile, type TableFile, type TableFileSettings } from '../export/table-file.ts'
import type { FrameFacts } from '../frame/frame.ts'
import type { ColourTable } from '../luts/colour-table.ts'
import { readLutFile } from '../luts/read-lut-file.ts'
import type { Supplies } from '../operations/define.ts'
import type { Chain } from '../operations/step.ts'
import { describe } from '../pipeline/describe.ts'
import { tableHash } from '../roll/table-text.ts'

export interface BakeOrder {
  readonly chain: Chain
  readonly facts: FrameFacts
  readonly supplies: Supplies
  readonly settings: TableFileSettings
  /** Some of the frame's, six numbers each. */
  readonly pixels: Float64Array
}

const tableWorker = {
  /**
   * The table in a file, and its hash; the bytes are fetched and counted here, where a large file keeps nobody.
   * @throws Error with a sentence for people
   */
  async read(file: File): Promise<{ readonly id: string; readonly made: ColourTable }> {
    const made = readLutFile(new Uint8Array(await file.arrayBuffer()), `“${file.name}”`)
    const id = await tableHash(made.table.data)
    return transfer({ id, made }, [made.table.data.buffer])
  },
  /** The file that some steps of a chain leave as. @throws Error with a sentence for people */
  bake({ chain, facts, supplies, settings, pixels }: BakeOrder): TableFile {
    return tableFile(describe(chain, facts, { supplies }), settings, pixels)
  },
}
export type TableWorker = typeof tableWorker

expose(tableWorker)
