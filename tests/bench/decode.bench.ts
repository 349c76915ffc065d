// Opening a raw file until its first real picture can be drawn: read, decoded, facts found and overview made.
// Held to LibRaw's own half-size picture, which is the quickest it makes.
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { benchRow, type BenchRows } from '../../src/commands/bench-row.ts'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { benchFolder, benchRaw } from './bench-raw.ts'
import { compareSeconds } from './measure.ts'

export const rows: BenchRows = async function* () {
  const path = benchRaw()
  const libraw = await startLibRawInNode()
  const open = async () => decodeFrame(libraw, { fileName: path, bytes: await readFile(path) })
  const { ours, theirs } = await compareSeconds(open, [['dcraw_emu', '-h', '-Z', join(benchFolder, 'half.ppm'), path]])
  yield benchRow('24 MP raw to its first real picture ÷ dcraw_emu -h', ours, 's', theirs)
}
