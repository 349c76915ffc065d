// A 24 MP 16-bit TIFF from a raw file by `render`'s way (reference engine on all threads), held to LibRaw's better
// interpolation followed by libvips packing the result in the same way.
import { benchRow, type BenchRows } from '../../src/commands/bench-row.ts'
import { renderFile } from '../../src/commands/render-file.ts'
import { readRenderOptions } from '../../src/commands/render-options.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { benchFolder, benchRaw, rawToTiff } from './bench-raw.ts'
import { compareSeconds } from './measure.ts'

export const rows: BenchRows = async function* () {
  const path = benchRaw()
  const libraw = await startLibRawInNode()
  const options = readRenderOptions([path, '--out', benchFolder, '--overwrite'])
  const { ours, theirs } = await compareSeconds(() => renderFile(libraw, path, null, options), rawToTiff(path))
  yield benchRow('24 MP raw to 16-bit TIFF, no page ÷ dcraw_emu -q 3 -T and vips tiffsave', ours, 's', theirs)
}
