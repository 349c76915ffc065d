// Codes, sample for sample, against LibRaw's own commands: the mosaic before turning against `unprocessed_raw`, three
// channels against `dcraw_emu` without scaling, matrix or curve.
import { spawnSync } from 'node:child_process'
import { existsSync, readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, describe, expect, it } from 'vitest'
import { writeDng as writeDemoDng } from '../../demo-data/dng/dng-file.ts'
import { bodies } from '../../demo-data/sensor/body.ts'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import type { LibRaw } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import type { MosaicData } from '../../src/frame/frame.ts'
import { packLosslessJpeg } from '../support/lossless-jpeg.ts'
import { hasTool, say } from '../support/outside-tools.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { bayer, randomNumbers, sixBySix } from '../support/synthetic-sensor.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { tinyJpeg } from '../support/tiny-jpeg.ts'

const tool = 'unprocessed_raw'
const hasReference = hasTool(tool)
const realRaw = new URL('../../../shared/data/raw/dc50.kdc', import.meta.url)
const withoutMosaic = new URL('../../../shared/data/raw/c330.raw', import.meta.url)
const folder = temporaryFolder()
let libraw: LibRaw
beforeAll(async () => {
  libraw = await startLibRawInNode()
})

/** Size and codes of a 16-bit PGM or PPM. */
function readNetpbm(path: string): { width: number; codes: Uint16Array } {
  const picture = readFileSync(path)
  const [head, kind, width, height] = /^P([56])\s(\d+)\s(\d+)\s65535\s/.exec(picture.toString('latin1', 0, 40))!
  const codes = new Uint16Array(Number(width) * Number(height) * (kind === '6' ? 3 : 1))
  for (let i = 0; i < codes.length; i++) codes[i] = picture.readUInt16BE(head.length + i * 2)
  return { width: Number(width), codes }
}

/** The whole stored mosaic as the reference dumps it. */
function reference(name: string, bytes: Uint8Array): { width: number; codes: Uint16Array } {
  const path = join(folder, name)
  writeFileSync(path, bytes)
  spawnSync(tool, ['-q', path])
  return readNetpbm(`${path}.pgm`)
}

/** Where two lists of codes first differ, −1 where they are equal: a comparison by the test library takes minutes on a whole frame. */
function firstDifference(codes: Uint16Array, wanted: Uint16Array): number {
  return codes.length === wanted.length ? codes.findIndex((code, i) => code !== wanted[i]) : 0
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
      expect(firstDifference(sensor.codes, reference('dc50.kdc', bytes).codes)).toBe(-1)
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
    expect(firstDifference(sensor.codes, part(reference(`${name}.dng`, bytes), sensor, left, top))).toBe(-1)
  })

  it.skipIf(!hasTool('exiftool'))('a file as the demo roll writes them (skipped without exiftool)', async () => {
    const { border, white: saturation } = bodies.A
    const picture = { width: 90, height: 60 }
    const raw = { width: picture.width + border.left, height: picture.height + border.top }
    const codes = Uint16Array.from({ length: raw.width * raw.height }, () => 600 + random() * (saturation - 600))
    const exposure = { phase: 'GBRG', black: [512, 514, 511, 513], orientation: 1, iso: 100, exposureEv: 0 } as const
    const shot = {
      description: '',
      lens: '',
      exposureTime: [1, 60],
      aperture: 8,
      focalLengthMm: 28,
      takenAt: '',
    } as const
    const preview = { bytes: tinyJpeg, width: 16, height: 8 }
    const bytes = writeDemoDng({ codes, raw, picture }, bodies.A, exposure, shot, preview)
    const sensor = await mosaicOf('demo.dng', bytes)
    const dump = reference('demo.dng', bytes)
    // Its border is masked and its crop leaves out four photosites more; both are read from the file by an outside reader.
    const [left, top] = pictureOrigin('demo.dng')
    expect(firstDifference(sensor.codes, part(dump, sensor, left, top))).toBe(-1)
  })
})

it.skipIf(!existsSync(withoutMosaic) || !hasTool('dcraw_emu'))(
  'three channels of a real file without a mosaic equal dcraw_emu (skipped without file or tool)',
  async () => {
    const [raw, ppm] = [join(folder, 'c330.raw'), join(folder, 'c330.ppm')]
    const bytes = new Uint8Array(readFileSync(withoutMosaic))
    writeFileSync(raw, bytes)
    say('dcraw_emu', ['-4', '-o', '0', '-r', '1', '1', '1', '1', '-c', '0', '-Z', ppm, raw])
    const { sensor, warnings } = await decodeFrame(libraw, { fileName: 'c330.raw', bytes })
    const { codes, ...levels } = sensor
    expect(levels).toEqual({ kind: 'linear', width: 1216, height: 912, black: [0, 0, 0], white: 65535 })
    expect(firstDifference(codes, readNetpbm(ppm).codes)).toBe(-1)
    expect(warnings).toEqual([])
  },
)
