// Threads and strips must not be seen in the picture: it equals the reference engine run over the whole frame at once.
import { expect, it } from 'vitest'
import { threadedPicture } from '../../src/commands/threaded-picture.ts'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { renderCpuStrip } from '../../src/export/cpu-strip.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { mosaicFacts as facts, syntheticMosaic } from '../support/synthetic-mosaic.ts'

const sensor = syntheticMosaic(96, 75)
const chain = defaultChain(facts)
const picture = threadedPicture({ sensor, chain, facts, supplies: {}, space: 'display-p3' })

it.each([8, 16] as const)('%i bits: strips of threads join to the picture made at once', async (bits) => {
  const whole = renderCpuStrip(sensor, describe(chain, facts, { space: 'display-p3' }), { top: 0, rows: 75, bits })
  const joined: number[] = []
  let expectedTop = 0
  for await (const { top, rows, samples } of picture.renderStrips({
    bits,
    rowsPerStrip: 16,
    signal: AbortSignal.any([]),
  })) {
    expect(top).toBe(expectedTop)
    expectedTop += rows
    joined.push(...samples)
  }
  expect(joined).toEqual([...whole.samples])
})

it('stops when it is cancelled', async () => {
  const cancel = new AbortController()
  const strips = picture.renderStrips({ bits: 8, rowsPerStrip: 16, signal: cancel.signal })[Symbol.asyncIterator]()
  await strips.next()
  cancel.abort()
  await expect(strips.next()).rejects.toThrow(/abort/i)
})
