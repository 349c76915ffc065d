// A whole frame of the roll at a small size: repeatable, the same however it is divided, and true to its own ground truth.
import { beforeAll, describe, expect, test } from 'vitest'
import { frameSize } from '../../demo-data/frame-size.ts'
import { materialNames } from '../../demo-data/light/materials.ts'
import { createPalette } from '../../demo-data/light/triplets.ts'
import { makeFrame, type MadeFrame, makeShare } from '../../demo-data/make-frame.ts'
import { provideJpegEncoderFromDisk } from '../../demo-data/node-jpeg.ts'
import { findFrame, roll } from '../../demo-data/roll.ts'
import { createStripMaker, type Strip } from '../../demo-data/strip.ts'

const order = { frameId: 'mere-01-meadow-720', megapixels: 0.12, truth: true }
let made: MadeFrame
let maker: Awaited<ReturnType<typeof createStripMaker>>
let whole: Strip

beforeAll(async () => {
  provideJpegEncoderFromDisk()
  made = await makeFrame(order)
  maker = await createStripMaker(order)
  whole = maker.make(0, maker.size.height)
}, 120_000)

describe('a frame of the demo roll', () => {
  test('comes out byte for byte the same when two workers share it', async () => {
    const progress: number[] = []
    const shared = await makeFrame(order, (done) => progress.push(done), [makeShare])
    expect(Buffer.from(shared.bytes).equals(Buffer.from(made.bytes))).toBe(true)
    expect(progress.at(-1)).toBe(1)
    expect(progress).toEqual([...progress].sort((a, b) => a - b))
  })

  test('has the same rows whichever strip they are made in', () => {
    const { size, make } = maker
    const part = make(37, 91)
    expect(part.codes).toEqual(whole.codes.slice(37 * size.width, 91 * size.width))
    expect(part.material).toEqual(whole.material.slice(37 * size.width, 91 * size.width))
  })

  test('knows what every pixel shows: sky above, grass below, cloud and foliage lit by the sun', () => {
    const { width, height } = made.size
    const share = (name: string, y0: number, y1: number) => {
      const rows = made.material.subarray(Math.round(y0 * height) * width, Math.round(y1 * height) * width)
      const id = materialNames.indexOf(name as (typeof materialNames)[number])
      return rows.reduce((n, m) => n + (m === id ? 1 : 0), 0) / rows.length
    }
    expect(share('nothing', 0, 0.2) + share('cloud', 0, 0.2)).toBeGreaterThan(0.8)
    expect(share('grass', 0.75, 1) + share('dryGrass', 0.75, 1)).toBeGreaterThan(0.6)
    expect(share('nothing', 0.75, 1)).toBe(0)
    const cloud = materialNames.indexOf('cloud')
    expect(made.sun.some((s, i) => made.material[i] === cloud && s > 150)).toBe(true)
  })

  test('shows sunlit clouds in the colour that the spectra give a white thing in sunlight', () => {
    const frame = findFrame(order.frameId)
    const { size } = maker
    const cloud = materialNames.indexOf('cloud')
    // Half-lit cloud: bright, yet no channel can clip, which would drop the brightest of one colour only.
    const sums = [0, 0, 0]
    const counts = [0, 0, 0]
    whole.codes.forEach((code, i) => {
      const [x, y] = [i % size.width, Math.floor(i / size.width)]
      if (whole.material[i] !== cloud || whole.sun[i] < 120 || whole.sun[i] > 165 || y > size.height / 3) return
      const place = (y & 1) * 2 + (x & 1)
      const c = 'RGB'.indexOf(frame.exposure.phase[place])
      sums[c] += code - frame.exposure.black[place]
      counts[c]++
    })
    const [r, g, b] = sums.map((s, c) => s / counts[c])
    const t = createPalette(frame.sensor, frame.filter).of('cloud').t
    expect(counts[1]).toBeGreaterThan(50)
    expect(Math.abs(Math.log2(r / g / (t[0] / t[1])))).toBeLessThan(0.12)
    expect(Math.abs(Math.log2(b / g / (t[2] / t[1])))).toBeLessThan(0.12)
  })
})

describe('the roll', () => {
  test('has every phase of the filter pattern, two sensors, a turned frame and a hot spot', () => {
    expect(new Set(roll.map((f) => f.exposure.phase)).size).toBe(4)
    expect(new Set(roll.map((f) => f.sensor)).size).toBe(2)
    expect(roll.some((f) => f.exposure.orientation !== 1)).toBe(true)
    expect(roll.filter((f) => f.exposure.hotSpot)).toHaveLength(1)
    expect(new Set(roll.map((f) => f.id)).size).toBe(roll.length)
  })

  test('refuses an unknown frame and a size beyond reason with a sentence', () => {
    expect(() => findFrame('nowhere')).toThrow(/No demo frame is called "nowhere".*mere-01/)
    expect(() => frameSize(900, 1.5)).toThrow(/0\.05 to 64 megapixels; 900/)
  })
})
