// Files that cannot be opened: each a sentence that names the file, the reason and what to do, and the decoder goes on.
import { beforeAll, describe, expect, it } from 'vitest'
import { prepareNodeJpegDecoder } from '../../src/commands/node-jpeg.ts'
import { decodeFrame } from '../../src/decode/decode-frame.ts'
import { DecodeError } from '../../src/decode/decode-error.ts'
import type { LibRaw } from '../../src/decode/libraw.ts'
import { startLibRawInNode } from '../../src/decode/libraw-in-node.ts'
import type { MosaicData } from '../../src/frame/frame.ts'
import { packLosslessJpeg } from '../support/lossless-jpeg.ts'
import { type SyntheticDng, writeDng } from '../support/synthetic-dng.ts'
import { bayer, randomNumbers, sixBySix } from '../support/synthetic-sensor.ts'
import { tinyJpeg } from '../support/tiny-jpeg.ts'

let libraw: LibRaw
beforeAll(async () => {
  await prepareNodeJpegDecoder()
  libraw = await startLibRawInNode()
})
const decode = (bytes: Uint8Array) => decodeFrame(libraw, { fileName: 'pond.dng', bytes: Uint8Array.from(bytes) })

const [width, height] = [64, 48]
const codes = Uint16Array.from({ length: width * height }, (_, i) => 600 + (i % 1000))
const dng = (changes: Partial<SyntheticDng> = {}) =>
  writeDng({ width, height, codes, cfa: bayer, white: 15800, ...changes })
const good = dng()
const random = randomNumbers(3)

describe('refused', () => {
  it.each<{ name: string; bytes: Uint8Array; reason: string }>([
    { name: 'empty', bytes: new Uint8Array(), reason: 'is empty; copy it from the card again.' },
    {
      name: 'noise',
      bytes: Uint8Array.from({ length: 5000 }, () => random() * 256),
      reason: 'is no photograph of a known kind; open the camera’s raw file, a DNG made from it, a JPEG or a TIFF.',
    },
    {
      name: 'half a JPEG',
      bytes: tinyJpeg.slice(0, -12),
      reason: 'ends before its picture does; copy it from the card again.',
    },
    {
      name: 'half a file',
      bytes: good.slice(0, good.length / 2),
      reason: 'ends before its picture does; copy it from the card again.',
    },
    {
      name: 'half a header',
      bytes: good.slice(0, 100),
      reason: 'ends before its picture does; copy it from the card again.',
    },
    {
      name: 'sizes that lie',
      bytes: dng({
        tags: [
          [256, 4, [6000]],
          [257, 4, [4000]],
        ],
      }),
      reason: 'ends before its picture does; copy it from the card again.',
    },
    {
      name: 'an enormous size',
      bytes: dng({
        tags: [
          [256, 4, [60000]],
          [257, 4, [60000]],
        ],
      }),
      reason:
        'claims 60000 × 60000 pixels, more than can be decoded; if that is wrong the file is damaged: copy it from the card again.',
    },
    {
      name: 'deflated whole numbers',
      bytes: dng({ packed: { compression: 8, bytes: new Uint8Array(500) } }),
      reason:
        'packs its picture in a way that cannot be unpacked here; save it as a losslessly compressed DNG and open that.',
    },
    {
      name: 'staggered rows',
      bytes: dng({ tags: [[50711, 3, [2]]] }),
      reason:
        'comes from a sensor with an unusual pattern of colours, which is not understood here; save it as a linear DNG and open that.',
    },
    {
      name: 'colours other than red, green and blue',
      bytes: dng({ cfa: { ...bayer, colours: [3, 1, 4, 2] } }),
      reason:
        'comes from a sensor with 4 colours, which is not understood here; save it as a linear DNG and open that.',
    },
    {
      name: 'two colours only',
      bytes: dng({ cfa: { ...sixBySix, colours: sixBySix.colours.map((colour) => colour % 2) } }),
      reason:
        'comes from a sensor with an unusual pattern of colours, which is not understood here; save it as a linear DNG and open that.',
    },
    {
      name: 'white below black',
      bytes: dng({ black: { columns: 1, rows: 1, codes: [16000] } }),
      reason: 'states a white that is not above its black, so its codes mean nothing; copy it from the card again.',
    },
    {
      name: 'a picture smaller than a cell',
      bytes: dng({ crop: [0, 0, 1, 1] }),
      reason: 'holds a picture smaller than one cell of its sensor, so there is nothing to show; open another file.',
    },
  ])('$name', async ({ bytes, reason }) => {
    const refusal = await decode(bytes).then(
      () => null,
      (error: unknown) => error,
    )
    expect(refusal).toBeInstanceOf(DecodeError)
    expect(refusal).toHaveProperty('message', `“pond.dng” ${reason}`)
    expect((await decode(good)).sensor.codes).toEqual(codes)
  })
})

it('a header with a few bytes changed opens with finite facts or is refused with a sentence', async () => {
  const changed = dng({ activeArea: [2, 4, 46, 60], crop: [1, 1, 50, 40], preview: tinyJpeg })
  const headLength = changed.length - codes.byteLength
  for (let seed = 0; seed < 150; seed++) {
    const random = randomNumbers(seed)
    const bytes = Uint8Array.from(changed)
    for (let n = 0; n < 3; n++) bytes[Math.floor(random() * headLength)] = random() * 256
    const outcome = await decode(bytes).then(
      ({ facts }) => [...facts.referenceNeutral, ...facts.meanCameraRgb].every(Number.isFinite),
      (error: unknown) => error instanceof DecodeError && /^“pond.dng” .+; .+\.$/.test(error.message),
    )
    expect(outcome, `seed ${seed}`).toBe(true)
  }
})

describe('opened with a warning', () => {
  it('a damaged lossless JPEG, which decodes to something', async () => {
    const packed = packLosslessJpeg(codes, width, height)
    for (let i = packed.length >> 1; i < packed.length; i++) packed[i] = 0xff
    const { warnings } = await decode(dng({ packed: { compression: 7, bytes: packed } }))
    expect(warnings).toHaveLength(1)
    expect(warnings[0]).toMatch(/^The file is damaged: parts of the picture may be wrong/)
  })

  it('a file that asks for corrections', async () => {
    const { warnings } = await decode(dng({ tags: [[51009, 1, [0, 0, 0, 0]]] }))
    expect(warnings).toEqual([
      'The file asks for corrections of lens or sensor (an opcode list) that are not made here.',
    ])
  })
})

it('floating-point files open with the white the decoder gives them', async () => {
  const floats = Float32Array.from(codes, (_, i) => i / codes.length)
  const bytes = dng({
    codes: new Uint16Array(floats.buffer),
    tags: [
      [258, 3, [32]],
      [339, 3, [3]],
      [50717, 4, [1]],
    ],
  })
  const sensor = (await decode(bytes)).sensor as MosaicData
  for (let i = 0; i < codes.length; i += 37) expect(sensor.codes[i] / sensor.white).toBeCloseTo(floats[i], 3)
})
