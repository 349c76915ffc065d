// Graphics that give up in the middle of an export, or cannot compute one, must not be seen in the file.
import { afterEach, expect, it, vi } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { renderCpuStrip } from '../../src/export/cpu-strip.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { finishedPicture } from '../../src/workbench/finished-picture.ts'
import { mosaicFacts as facts, syntheticMosaic } from '../support/synthetic-mosaic.ts'

const sensor = syntheticMosaic(40, 1500)
const description = describe(defaultChain(facts), facts)
const whole = renderCpuStrip(sensor, description, { top: 0, rows: sensor.height, bits: 8 }).samples
const getContext = OffscreenCanvas.prototype.getContext

afterEach(() => vi.restoreAllMocks())

/** All samples in order; `afterStrip` is called with the number of strips so far. */
async function samplesOf(afterStrip: (strips: number) => void = () => undefined): Promise<number[]> {
  const request = { bits: 8, rowsPerStrip: 100, signal: new AbortController().signal } as const
  const samples: number[] = []
  let strips = 0
  for await (const strip of finishedPicture(sensor, description).renderStrips(request)) {
    expect(strip.top).toBe(strips * 100)
    samples.push(...strip.samples)
    afterStrip(++strips)
  }
  return samples
}

function expectWhole(samples: readonly number[]): void {
  expect(samples).toHaveLength(whole.length)
  const worst = samples.reduce((most, sample, i) => Math.max(most, Math.abs(sample - whole[i])), 0)
  expect(worst).toBeLessThanOrEqual(1)
}

it('goes on from the strip at which the graphics were lost', async () => {
  let gl: WebGL2RenderingContext | null = null
  vi.spyOn(OffscreenCanvas.prototype, 'getContext').mockImplementation(function (this: OffscreenCanvas, ...words) {
    const context = getContext.apply(this, words)
    if (context instanceof WebGL2RenderingContext) gl = context
    return context
  } as typeof getContext)
  const samples = await samplesOf((strips) => {
    if (strips === 1) gl!.getExtension('WEBGL_lose_context')!.loseContext()
  })
  expect(gl!.isContextLost()).toBe(true)
  expectWhole(samples)
})

it('works without graphics', async () => {
  vi.spyOn(OffscreenCanvas.prototype, 'getContext').mockReturnValue(null)
  expect(await samplesOf()).toEqual([...whole])
})
