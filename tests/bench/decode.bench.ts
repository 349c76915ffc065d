// Opening a raw file: until its first real picture can be drawn (read, decoded, facts found, overview made, what is still to be
// read of it kept), and until all that is told of it has been read. Held to LibRaw's own half-size picture, which is the
// quickest it makes.
import { readFile } from 'node:fs/promises'
import { join } from 'node:path'
import { laterReadings } from '../../src/analysis/frame-readings.ts'
import { benchRow, type BenchRows } from '../../src/commands/bench-row.ts'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { benchFolder, benchRaw } from './bench-raw.ts'
import { compareSeconds } from './measure.ts'

export const rows: BenchRows = async function* () {
  const path = benchRaw()
  const libraw = await startLibRawInNode()
  const open = async () => laterReadings(await decodeFrame(libraw, { fileName: path, bytes: await readFile(path) }))
  const reference = [['dcraw_emu', '-h', '-Z', join(benchFolder, 'half.ppm'), path]]

  const picture = await compareSeconds(open, reference)
  yield benchRow('24 MP raw to its first real picture ÷ dcraw_emu -h', picture.ours, 's', picture.theirs)

  const all = await compareSeconds(async () => (await open())(), reference)
  yield benchRow('24 MP raw to its picture and all readings ÷ dcraw_emu -h', all.ours, 's', all.theirs)
}
