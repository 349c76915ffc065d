// JPEG and TIFF through the decode worker of the page: the same codes as in Node, where outside tools hold them.
import encodeJpeg from '@jsquash/jpeg/encode.js'
import { afterAll, expect, it } from 'vitest'

import { writeTiff } from '../../demo-data/dng/tiff.ts'
import { decode, SRGB_CURVE } from '../../src/colour/transfer-curve.ts'
import { startDecodeClient } from '../../src/decode/decode-client.ts'

const [width, height] = [48, 32]
const client = startDecodeClient()
afterAll(() => client.close())

it('a TIFF is linear to the last code', async () => {
  const codes = Uint8Array.from({ length: width * height * 3 }, (_, i) => (i * 7) % 256)
  const bytes = writeTiff([
    { tag: 256, type: 'long', values: [width] },
    { tag: 257, type: 'long', values: [height] },
    { tag: 258, type: 'short', values: [8, 8, 8] },
    { tag: 259, type: 'short', values: [1] },
    { tag: 262, type: 'short', values: [2] },
    { tag: 273, type: 'data', bytes: codes },
    { tag: 277, type: 'short', values: [3] },
    { tag: 278, type: 'long', values: [height] },
    { tag: 279, type: 'long', values: [codes.length] },
  ])
  const { sensor, developed } = (await client.decode(new File([bytes], 'pond.tif'))).frame
  expect(sensor.codes).toEqual(Uint16Array.from(codes, (code) => Math.round(decode(SRGB_CURVE, code / 255) * 65535)))
  expect(developed).toEqual({ format: 'TIFF', bits: 8, space: 'sRGB' })
})

it('a JPEG opens, its plain areas within a code or two of what was put in', async () => {
  const image = new ImageData(width, height)
  for (let i = 0; i < image.data.length; i += 4)
    image.data.set(i % (width * 4) < width * 2 ? [200, 120, 40, 255] : [60, 90, 150, 255], i)
  const file = new File([await encodeJpeg(image, { quality: 95 })], 'pond.jpg')
  const { sensor, developed, facts } = (await client.decode(file)).frame
  expect(developed).toEqual({ format: 'JPEG', bits: 8, space: 'sRGB' })
  const linear = (code: number) => decode(SRGB_CURVE, code / 255) * 65535
  for (const [channel, code] of [200, 120, 40].entries()) {
    expect(sensor.codes[channel]).toBeGreaterThanOrEqual(Math.floor(linear(code - 2)))
    expect(sensor.codes[channel]).toBeLessThanOrEqual(Math.ceil(linear(code + 2)))
  }
  expect(facts.noise.rounding?.levels).toHaveLength(256)
})

it('half a JPEG says why it does not open, and the next file does', async () => {
  const image = new ImageData(width, height)
  const whole = await encodeJpeg(image, { quality: 95 })
  await expect(client.decode(new File([whole.slice(0, whole.byteLength - 20)], 'half.jpg'))).rejects.toThrow(
    '“half.jpg” ends before its picture does; copy it from the card again.',
  )
  await expect(client.decode(new File([whole], 'whole.jpg'))).resolves.toMatchObject({
    frame: { fileName: 'whole.jpg' },
  })
})
