// The raw file that benches open: a frame of the demo roll at 24 megapixels, made once and kept.
import { existsSync, mkdirSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import { roll } from '../../demo-data/roll.ts'
import { say } from '../support/outside-tools.ts'

const root = fileURLToPath(new URL('../../', import.meta.url))
export const benchFolder = join(root, '.cache/bench')
/** Dunes: the quickest to make. */
const frameNumber = 6

/** Path of the file. */
export function benchRaw(): string {
  const path = join(benchFolder, `${roll[frameNumber - 1].id}.dng`)
  if (existsSync(path)) return path
  mkdirSync(benchFolder, { recursive: true })
  const script = join(root, 'demo-data/write-files.ts')
  const words = ['--out', benchFolder, '--megapixels', '24', '--frames', String(frameNumber)]
  say(process.execPath, ['--import', 'tsx', script, ...words])
  return path
}

/** Commands of LibRaw and libvips that make a 16-bit TIFF of a raw file, packed as ours are. */
export function rawToTiff(raw: string): string[][] {
  const [plain, packed] = [join(benchFolder, 'plain.tiff'), join(benchFolder, 'packed.tif')]
  return [
    ['dcraw_emu', '-q', '3', '-6', '-T', '-Z', plain, raw],
    ['vips', 'tiffsave', plain, packed, '--compression', 'deflate', '--predictor', 'horizontal'],
  ]
}
