// Decoding as the page does it: a file handed to the real worker, the preview first, pixels handed back, readings last and the
// same as those of the pixels that came.
import { afterAll, describe, expect, it } from 'vitest'
import { referencePlaces } from '../../src/analysis/reference-places.ts'
import { startDecodeClient } from '../../src/decode/decode-client.ts'
import { DecodeError } from '../../src/decode/decode-error.ts'
import { sensorHistogram } from '../../src/frame/sensor-histogram.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { bayer } from '../support/synthetic-sensor.ts'
import { tinyJpeg } from '../support/tiny-jpeg.ts'

const [width, height] = [64, 48]
const codes = Uint16Array.from({ length: width * height }, (_, i) => 600 + (i % 1000))
const black = { columns: 2, rows: 2, codes: [512, 511, 513, 512] }
const dng = { width, height, codes, cfa: bayer, black, white: 15800, orientation: 8, preview: tinyJpeg }
const bytes = writeDng(dng)
const file = new File([bytes], 'pond.dng')

const client = startDecodeClient()
client.prepare()
afterAll(() => client.close())

describe('decode worker', () => {
  it('gives the preview first, then the frame, upright, then its readings', async () => {
    const order: string[] = []
    let preview: Blob | undefined
    const { frame, readings } = await client.decode(file, {
      onPreview(jpeg) {
        order.push('preview')
        preview = jpeg
      },
    })
    order.push('frame')
    const found = await readings.finally(() => order.push('readings'))
    expect(order).toEqual(['preview', 'frame', 'readings'])
    expect(found.histogram).toEqual(sensorHistogram(frame.sensor))
    expect(found.histogram.reduce((sum, { photosites }) => sum + photosites, 0)).toBe(width * height)
    expect(found.places).toEqual(referencePlaces(frame.cells))
    // A quarter turn to the left, as the embedded picture's own orientation says.
    const bitmap = await createImageBitmap(preview!)
    expect([bitmap.width, bitmap.height]).toEqual([8, 16])

    const { sensor, overview } = frame
    expect(sensor).toMatchObject({ kind: 'mosaic', width: height, height: width, white: 15800 })
    const turned = Array.from({ length: width * height }, (_, i) => {
      const [x, y] = [i % height, Math.floor(i / height)]
      return codes[x * width + (width - 1 - y)]
    })
    expect(Array.from(sensor.codes)).toEqual(turned)
    expect([overview.width, overview.height, overview.scale]).toEqual([24, 32, 2])
    const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', bytes))
    expect(frame.fingerprint).toBe(Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join(''))
  })

  it('a failure is a sentence, and the next file opens all the same', async () => {
    const broken = new File([bytes.slice(0, bytes.length / 2)], 'torn.dng')
    await expect(client.decode(broken)).rejects.toThrow(DecodeError)
    await expect(client.decode(broken)).rejects.toThrow(
      '“torn.dng” ends before its picture does; copy it from the card',
    )
    expect((await client.decode(file)).frame.fileName).toBe('pond.dng')
  })

  it('files wait for each other; one that waits, or is at work, can be given up', async () => {
    const [first, second] = [new AbortController(), new AbortController()]
    const outcomes = Promise.allSettled([
      client.decode(file, { signal: first.signal }),
      client.decode(file, { signal: second.signal }),
      client.decode(file),
    ])
    second.abort()
    await Promise.resolve()
    first.abort()
    const [atWork, waiting, last] = await outcomes
    expect([atWork.status, waiting.status, last.status]).toEqual(['rejected', 'rejected', 'fulfilled'])
    expect((atWork as PromiseRejectedResult).reason).toHaveProperty('name', 'AbortError')
  })
})
