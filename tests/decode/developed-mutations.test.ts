// JPEG and TIFF files changed by chance, with fixed seeds: each opens with finite facts or is refused with a sentence, and the
// decoder goes on. Made here without outside tools.
import { beforeAll, expect, it } from 'vitest'
import { writeTiff } from '../../demo-data/dng/tiff.ts'
import { prepareNodeJpegDecoder } from '../../src/commands/node-jpeg.ts'
import { DecodeError } from '../../src/decode/decode-error.ts'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import type { LibRaw } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import { randomNumbers } from '../support/synthetic-sensor.ts'
import { tinyJpeg } from '../support/tiny-jpeg.ts'

let libraw: LibRaw
beforeAll(async () => {
  await prepareNodeJpegDecoder()
  libraw = await startLibRawInNode()
})

const [width, height] = [24, 16]
const tinyTiff = writeTiff([
  { tag: 256, type: 'long', values: [width] },
  { tag: 257, type: 'long', values: [height] },
  { tag: 258, type: 'short', values: [8, 8, 8] },
  { tag: 259, type: 'short', values: [1] },
  { tag: 262, type: 'short', values: [2] },
  { tag: 273, type: 'data', bytes: Uint8Array.from({ length: width * height * 3 }, (_, i) => (i * 5) % 256) },
  { tag: 277, type: 'short', values: [3] },
  { tag: 278, type: 'long', values: [height] },
  { tag: 279, type: 'long', values: [width * height * 3] },
])

/** 'opened', 'refused', or what went wrong. */
async function outcomeOf(fileName: string, bytes: Uint8Array<ArrayBuffer>): Promise<string> {
  try {
    const { facts } = await decodeFrame(libraw, { fileName, bytes })
    return [...facts.referenceNeutral, ...facts.meanCameraRgb].every(Number.isFinite) ? 'opened' : 'facts without end'
  } catch (thrown) {
    return thrown instanceof DecodeError && /^“.+; .+\.$/.test(thrown.message) ? 'refused' : String(thrown)
  }
}

it.each([
  ['pond.jpg', tinyJpeg],
  ['pond.tif', tinyTiff],
])('%s with a few bytes changed, or cut: opened or refused, nothing else', async (fileName, whole) => {
  expect(await outcomeOf(fileName, Uint8Array.from(whole))).toBe('opened')
  const counts: Record<string, number> = {}
  for (let seed = 0; seed < 400; seed++) {
    const random = randomNumbers(seed)
    const bytes = Uint8Array.from(whole)
    const reach = seed % 2 ? bytes.length : Math.min(bytes.length, 220)
    for (let n = 0; n < 3; n++) bytes[Math.floor(random() * reach)] = random() * 256
    const changed = seed % 5 ? bytes : bytes.slice(0, random() * bytes.length)
    const outcome = await outcomeOf(fileName, changed)
    counts[outcome] = (counts[outcome] ?? 0) + 1
  }
  console.info(fileName, counts)
  expect(Object.keys(counts).toSorted()).toEqual(['opened', 'refused'])
})
