// Views that need more than the overview: sensor pixels at 1:1 and beyond, every kind of sensor, across tile seams, while
// gains change, and on graphics that cannot render to float.
import { afterEach, expect, it, onTestFinished, vi } from 'vitest'

import type { SensorData } from '../../src/frame/frame.ts'
import type { PictureRequest, PictureView } from '../../src/gpu/picture-request.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { demosaicTile } from '../../src/sensor/demosaic-tile.ts'
import { createDrawnPicture, type DrawnPicture } from './drawn-picture.ts'
import { sampleChain } from './sample-chain.ts'
import { sampleLinear, sampleMosaic, sampleOverview, sixBySix } from './sample-frame.ts'

/** Larger than a tile, so that views can look at a seam. */
const [width, height] = [1200, 200]
const overview = sampleOverview(300, 50, 4)
/** The seam at column 1024 lies in the middle. */
const view: PictureView = { width: 160, height: 90, left: -944, top: -40, zoom: 1 }

let picture: DrawnPicture | undefined
afterEach(() => picture?.renderer.dispose())

async function draw(sensor: SensorData, request: Partial<PictureRequest>, withhold = {}): Promise<Uint8Array> {
  picture = createDrawnPicture({ withhold })
  picture.renderer.setFrame({ sensor, overview })
  picture.renderer.draw({ description: sampleChain(), view, quality: 'still', screenSpace: 'srgb', ...request })
  await picture.renderer.settled()
  return picture.pixels()
}

/** Largest difference in codes from the reference engine for what `zoomed` shows, nearest pixel. */
function apart(codes: Uint8Array, sensor: SensorData, description: PipelineDescription, zoomed = view): number {
  const { zoom } = zoomed
  const first = { x: Math.floor(-zoomed.left / zoom), y: Math.floor(-zoomed.top / zoom) }
  const size = { width: Math.ceil(zoomed.width / zoom), height: Math.ceil(zoomed.height / zoom) }
  const area = { ...first, ...size }
  const camera = demosaicTile(sensor, area, description.mosaicGains)
  const cpu = renderOnCpu(description, camera, { ...area, frameWidth: width, frameHeight: height })
  let worst = 0
  for (let y = 0; y < zoomed.height; y++) {
    for (let x = 0; x < zoomed.width; x++) {
      const from = (Math.floor(y / zoom) * size.width + Math.floor(x / zoom)) * 3
      for (let c = 0; c < 3; c++) {
        worst = Math.max(worst, Math.abs(codes[(y * zoomed.width + x) * 4 + c] - cpu[from + c] * 255))
      }
    }
  }
  return worst
}

const sensors: readonly (readonly [string, SensorData])[] = [
  ['2×2', sampleMosaic(width, height)],
  ['one channel', sampleMosaic(width, height, { columns: 1, rows: 1, colours: [1] })],
  ['6×6', sampleMosaic(width, height, sixBySix)],
  ['three channels', sampleLinear(width, height)],
]

it.each(sensors)('%s at 1:1 is within one code of the reference, seam included', async (_name, sensor) => {
  expect(apart(await draw(sensor, {}), sensor, sampleChain())).toBeLessThanOrEqual(1)
})

it.each(sensors)(
  '%s: what makes tiles is linked once for all frames, while the overview stands in',
  async (_name, sensor) => {
    const linked = vi.spyOn(WebGL2RenderingContext.prototype, 'linkProgram')
    onTestFinished(() => linked.mockRestore())
    await draw(sensor, {})
    // The first drawing does not wait for tiles; the last shows them.
    expect(picture!.count()).toBeGreaterThan(1)
    const { length } = linked.mock.calls
    picture!.renderer.setFrame({ sensor: { ...sensor }, overview })
    await picture!.renderer.settled()
    expect(linked.mock.calls).toHaveLength(length)
  },
)

it.each(sensors)('%s at 1:1 is so too where nothing can be rendered to float', async (_name, sensor) => {
  const codes = await draw(sensor, {}, { float16: true })
  expect(picture!.renderer.capabilities).toMatchObject({ tiles16F: false, export32F: false })
  expect(picture!.renderer.capabilities.limit).toMatch(/8 bits only/)
  expect(apart(codes, sensor, sampleChain())).toBeLessThanOrEqual(1)
})

it('6×6 at 1:1 is so too where 16-bit float is the most that can be rendered to', async () => {
  const sensor = sampleMosaic(width, height, sixBySix)
  const codes = await draw(sensor, {}, { float32: true })
  expect(picture!.renderer.capabilities).toMatchObject({ tiles16F: true, export32F: false })
  expect(picture!.renderer.capabilities.limit).toMatch(/exports are computed by the processor/)
  expect(apart(codes, sensor, sampleChain())).toBeLessThanOrEqual(1)
})

it('shows sensor pixels as squares from 2:1 on', async () => {
  const sensor = sampleMosaic(width, height)
  const zoomed: PictureView = { width: 160, height: 90, left: -4096 + 80, top: -120, zoom: 4 }
  expect(apart(await draw(sensor, { view: zoomed }), sensor, sampleChain(), zoomed)).toBeLessThanOrEqual(1)
})

it('changed gains reach the tiles in view', async () => {
  const sensor = sampleMosaic(width, height)
  await draw(sensor, {})
  const changed = sampleChain(0.3, -0.2)
  picture!.renderer.draw({ description: changed, view, quality: 'still', screenSpace: 'srgb' })
  await picture!.renderer.settled()
  expect(apart(picture!.pixels(), sensor, changed)).toBeLessThanOrEqual(1)
})

it('between fit and 1:1 halved tiles show the mean of the pixels they stand for', async () => {
  const sensor = sampleMosaic(width, height)
  const halved: PictureView = { width: 160, height: 90, left: -432, top: 0, zoom: 0.5 }
  const description = sampleChain()
  const codes = await draw(sensor, { view: halved })
  const area = { x: 864, y: 0, width: 320, height: 180 }
  const camera = demosaicTile(sensor, area, description.mosaicGains)
  const mean = new Float32Array(160 * 90 * 4)
  for (let i = 0; i < mean.length; i++) {
    const [x, y] = [(i >> 2) % 160, Math.floor((i >> 2) / 160)]
    const four = [0, 1, 320, 321].map((step) => camera[(2 * y * 320 + 2 * x + step) * 4 + (i & 3)])
    mean[i] = (i & 3) === 3 ? Math.max(...four) : four.reduce((sum, value) => sum + value) / 4
  }
  const region = { x: 432, y: 0, width: 160, height: 90, frameWidth: width / 2, frameHeight: height / 2 }
  const cpu = renderOnCpu(description, mean, region)
  const worst = cpu.reduce((most, value, i) => {
    const code = codes[Math.floor(i / 3) * 4 + (i % 3)]
    return Math.max(most, Math.abs(code - value * 255))
  }, 0)
  expect(worst).toBeLessThanOrEqual(1)
})
