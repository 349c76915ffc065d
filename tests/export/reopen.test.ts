// A picture that was finished before opens as it looks: file, opening chain and strip of a new export meet the codes that libvips
// wrote. One whose colours nobody balanced opens balanced.
import { readFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'

import { prepareNodeJpegDecoder } from '../../src/commands/node-jpeg.ts'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import type { LibRaw } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { renderCpuStrip } from '../../src/export/cpu-strip.ts'
import { describe as describeChain } from '../../src/pipeline/describe.ts'
import { slopes, vipsCodes, vipsPicture } from '../support/developed-files.ts'
import { hasTool, say } from '../support/outside-tools.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()
let libraw: LibRaw
beforeAll(async () => {
  await prepareNodeJpegDecoder()
  libraw = await startLibRawInNode()
})

async function openAndExport(path: string, bits: 8 | 16) {
  const frame = await decodeFrame(libraw, { fileName: basename(path), bytes: Uint8Array.from(readFileSync(path)) })
  const chain = defaultChain(frame.facts)
  const whole = { top: 0, rows: frame.sensor.height, bits }
  return { chain, samples: renderCpuStrip(frame.sensor, describeChain(chain, frame.facts), whole).samples }
}
const furthest = (a: ArrayLike<number>, b: ArrayLike<number>) =>
  Array.from(a, (code, i) => Math.abs(code - b[i])).reduce((most, off) => Math.max(most, off), 0)

describe.skipIf(!hasTool('vips'))('a finished file (skipped without vips)', () => {
  // On the toe of the sRGB curve (IEC 61966-2-1) half a linear code of 16 bits is 6.5 encoded ones, and a channel takes from all three.
  it.each([
    ['TIFF of 16 bits', 'finished.tif', 16, 20],
    ['TIFF of 8 bits', 'finished8.tif', 8, 1],
    ['JPEG', 'finished.jpg', 8, 1],
  ] as const)('%s: exported again, its codes stand', async (_, name, bits, within) => {
    const path = join(folder, name)
    say('vips', ['copy', vipsPicture(folder, name, slopes(2 ** bits - 1), 3, bits), path])
    const { samples } = await openAndExport(path, bits)
    expect(furthest(samples, vipsCodes(path, bits))).toBeLessThanOrEqual(within)
  })

  it('in the red of a converted camera opens balanced', async () => {
    const path = join(folder, 'red.tif')
    const red = slopes(255).map((code, i) => (i % 3 === 0 ? code : Math.round(code / 2)))
    say('vips', ['copy', vipsPicture(folder, 'red', red, 3, 8), path])
    const { chain } = await openAndExport(path, 8)
    // By the same curve half an encoded code is 1 stop on the toe and up to 2.4 above it.
    expect(chain[0].values.redStops).toBeLessThan(-1.5)
    expect(chain[0].values.redStops).toBeGreaterThan(-2.4)
  })
})
