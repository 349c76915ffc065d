// Export on the GPU against the reference engine: codes of both depths, bands in order, every kind of sensor, seams between
// tiles, cancelling, and a context lost on the way.
import { afterEach, beforeEach, expect, it } from 'vitest'

import type { SensorData } from '../../src/frame/frame.ts'
import { createCanvasContext } from '../../src/gpu/canvas-context.ts'
import { createChainPrograms } from '../../src/gpu/chain-program.ts'
import { type Band, type BitDepth, exportBands, type ExportContext } from '../../src/gpu/export-bands.ts'
import { createPass } from '../../src/gpu/pass.ts'
import { quantise } from '../../src/pipeline/quantise.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { demosaicTile } from '../../src/sensor/demosaic-tile.ts'
import { roundingReach } from './rounding-reach.ts'
import { sampleChain } from './sample-chain.ts'
import { sampleLinear, sampleMosaic, sixBySix } from './sample-frame.ts'

/** Wider than a tile. */
const [width, height] = [2100, 40]
const description = sampleChain()

let context: ExportContext
beforeEach(() => {
  const renderer = createCanvasContext(new OffscreenCanvas(1, 1))
  renderer.getContext().getExtension('EXT_color_buffer_float')
  context = { renderer, pass: createPass(renderer), programs: createChainPrograms() }
})
afterEach(() => {
  context.programs.dispose()
  context.renderer.dispose()
})

async function collect(sensor: SensorData, bits: BitDepth, rowsPerBand: number): Promise<Band[]> {
  const bands: Band[] = []
  for await (const band of exportBands(context, { sensor, description, bits, rowsPerBand })) bands.push(band)
  return bands
}

/** The reference codes, and how far rounding may carry the code at an index. */
function onCpu(sensor: SensorData, bits: BitDepth) {
  const region = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }
  const camera = demosaicTile(sensor, region, description.mosaicGains)
  const rgb = renderOnCpu(description, camera, region)
  const codes = bits === 8 ? quantise(rgb, region, 8) : quantise(rgb, region, 16)
  const reachAt = (i: number) => {
    const pixel = Math.floor(i / 3)
    return roundingReach(description, camera.subarray(pixel * 4, pixel * 4 + 4), 1)[i % 3] * (2 ** bits - 1)
  }
  return { codes, reachAt }
}

const sensors: readonly (readonly [string, SensorData])[] = [
  ['2×2', sampleMosaic(width, height)],
  ['6×6', sampleMosaic(width, height, sixBySix)],
  ['three channels', sampleLinear(width, height)],
]

it.each(sensors)('%s: codes are the reference’s within one beyond the reach of rounding', async (_name, sensor) => {
  for (const bits of [8, 16] as const) {
    const cpu = onCpu(sensor, bits)
    const bands = await collect(sensor, bits, 16)
    const starts = bands.map(({ top, rows }) => `${top}+${rows}`)
    expect(starts).toEqual(['0+16', '16+16', '32+8'])
    const codes = bands.flatMap(({ samples }) => [...samples])
    const apart = codes.map((code, i) => Math.abs(code - cpu.codes[i]))
    const worst = apart.reduce((most, difference) => Math.max(most, difference))
    const beyond = apart.map((difference, i) => (difference > 1 ? difference - cpu.reachAt(i) : difference))
    const differing = apart.filter((difference) => difference > 0).length / codes.length
    console.log(`${bits} bits: worst ${worst}, ${(100 * differing).toFixed(2)} % differ`)
    expect(beyond.reduce((most, difference) => Math.max(most, difference))).toBeLessThanOrEqual(1)
    expect(differing).toBeLessThan(0.02)
  }
})

it('stops when its reader does', async () => {
  const sensor = sampleMosaic(width, height)
  for await (const band of exportBands(context, { sensor, description, bits: 8, rowsPerBand: 8 })) {
    expect(band.top).toBe(0)
    break
  }
  expect((await collect(sensor, 8, 8)).length).toBe(5)
})

it('says so when the graphics are lost instead of giving black rows', async () => {
  const job = { sensor: sampleMosaic(width, 600), description, bits: 8, rowsPerBand: 64 } as const
  const bands = exportBands(context, job)
  context.renderer.getContext().getExtension('WEBGL_lose_context')!.loseContext()
  await expect(bands.next()).rejects.toThrow(/graphics were reset/)
})
