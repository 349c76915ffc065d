// The mosaic, sample for sample, against the raw dump of LibRaw's own command `unprocessed_raw`, compared before turning.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { makeFrame } from '../../demo-data/make-frame.ts'
import { provideJpegEncoderFromDisk } from '../../demo-data/node-jpeg.ts'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import type { LibRaw } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import type { MosaicData } from '../../src/frame/frame.ts'
import { packLosslessJpeg } from '../support/lossless-jpeg.ts'
import { hasTool, say } from '../support/outside-tools.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { bayer, randomNumbers, sixBySix } from '../support/synthetic-sensor.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const tool = 'unprocessed_raw'
const hasReference = hasTool(tool)
const realRaw = new URL('../../../shared/data/raw/dc50.kdc', import.meta.url)
const folder = temporaryFolder()
let libraw: LibRaw
beforeAll(async () => {
  libraw = await startLibRawInNode()
  provideJpegEncoderFromDisk()
})

/** The whole stored mosaic as the reference dumps it: a 16-bit PGM. */
function reference(name: string, bytes: Uint8Array): { width: number; codes: Uint16Array } {
  const path = join(folder, name)
  writeFileSync(path, bytes)
  spawnSync(tool, ['-q', path])
  const pgm = readFileSync(`${path}.pgm`)
  const [head, width, height] = /^P5\s(\d+)\s(\d+)\s65535\s/.exec(pgm.toString('latin1', 0, 40))!
  const codes = new Uint16Array(Number(width) * Number(height))
  for (let i = 0; i < codes.length; i++) codes[i] = pgm.readUInt16BE(head.length + i * 2)
  return { width: Number(width), codes }
}

/** The part of a dump at (left, top) of the size of `sensor`. */
function part(dump: { width: number; codes: Uint16Array }, { width, height }: MosaicData, left: number, top: number) {
  const codes = new Uint16Array(width * height)
  for (let y = 0; y < height; y++) {
    const from = (top + y) * dump.width + left
    codes.set(dump.codes.subarray(from, from + width), y * width)
  }
  return codes
}

/** Left and top edge of the default crop within the stored mosaic, as exiftool reads them. */
function pictureOrigin(name: string): [number, number] {
  const [active, crop] = say('exiftool', ['-s3', '-n', '-ActiveArea', '-DefaultCropOrigin', join(folder, name)])
    .trim()
    .split('\n')
    .map((line) => line.split(' ').map(Number))
  return [active[1] + crop[0], active[0] + crop[1]]
}

async function mosaicOf(name: string, bytes: Uint8Array<ArrayBuffer>): Promise<MosaicData> {
  const { sensor, warnings } = await decodeFrame(libraw, { fileName: name, bytes })
  expect(warnings).toEqual([])
  return sensor as MosaicData
}

describe.skipIf(!hasReference)(`equals ${tool} (skipped where it is missing)`, () => {
  it.skipIf(!existsSync(realRaw))(
    'a real camera without tags for levels (skipped where the file is missing)',
    async () => {
      const bytes = Uint8Array.from(readFileSync(realRaw))
      const sensor = await mosaicOf('dc50.kdc', bytes)
      expect(sensor.codes).toEqual(reference('dc50.kdc', bytes).codes)
    },
  )

  const [width, height] = [123, 90]
  const random = randomNumbers(1)
  const codes = Uint16Array.from({ length: width * height }, () => 300 + random() * 15000)
  it.each([
    { name: 'plain', dng: {}, left: 0, top: 0 },
    { name: '6×6', dng: { cfa: sixBySix }, left: 0, top: 0 },
    { name: 'one channel', dng: { cfa: undefined }, left: 0, top: 0 },
    {
      name: 'odd active area and crop',
      dng: { activeArea: [7, 5, 87, 120], crop: [3, 2, 90, 61] } as const,
      left: 8,
      top: 9,
    },
    {
      name: 'lossless JPEG',
      dng: { packed: { compression: 7, bytes: packLosslessJpeg(codes, width, height) } },
      left: 0,
      top: 0,
    },
  ])('synthetic: $name', async ({ name, dng, left, top }) => {
    const bytes = writeDng({ width, height, codes, cfa: bayer, white: 16383, ...dng })
    const sensor = await mosaicOf(name, bytes)
    expect(sensor.codes).toEqual(part(reference(`${name}.dng`, bytes), sensor, left, top))
  })

  it.skipIf(!hasTool('exiftool'))('a frame of the demo roll (skipped without exiftool)', async () => {
    const { bytes } = await makeFrame({ frameId: 'mere-06-dunes-850', megapixels: 0.2 })
    const sensor = await mosaicOf('dunes', bytes)
    const dump = reference('dunes.dng', bytes)
    // Its border is masked and its crop leaves out four photosites more; both are read from the file by an outside reader.
    const [left, top] = pictureOrigin('dunes.dng')
    expect(sensor.codes).toEqual(part(dump, sensor, left, top))
  })
})
