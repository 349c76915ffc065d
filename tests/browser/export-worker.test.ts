// The export as the page runs it: worker, graphics, file handle. The reference engine says what must be in the file.
import { expect, it } from 'vitest'
import { defaultChain } from '../../src/edits/default-chain.ts'
import { renderCpuStrip } from '../../src/export/cpu-strip.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { exportInWorker } from '../../src/workbench/export-client.ts'
import type { ExportOrder } from '../../src/workbench/export-worker.ts'
import { readPackedStrips } from '../support/packed-strips.ts'
import { mosaicFacts as facts, syntheticMosaic } from '../support/synthetic-mosaic.ts'

const sensor = syntheticMosaic(150, 300)
const chain = defaultChain(facts)
const order: ExportOrder = {
  sensor,
  facts,
  metadata: { make: 'Fennel' },
  chain,
  supplies: {},
  settings: { format: 'tiff16', space: 'display-p3', quality: 92, keepLocation: false },
  destination: 'download',
}
const never = new AbortController().signal

it('the file holds the reference engine’s picture within one code of 16 bits', async () => {
  const fractions: number[] = []
  const file = await exportInWorker(order, (fraction) => fractions.push(fraction), never)
  const expected = renderCpuStrip(sensor, describe(chain, facts, { space: 'display-p3' }), {
    top: 0,
    rows: 300,
    bits: 16,
  })
  const samples = await readPackedStrips(file!)
  expect(samples).toHaveLength(expected.samples.length)
  const worst = samples.reduce((most, sample, i) => Math.max(most, Math.abs(sample - expected.samples[i])), 0)
  expect(worst).toBeLessThanOrEqual(1)
  expect(fractions.at(-1)).toBe(1)
})

it('a chosen file is filled, and nothing is handed back to download', async () => {
  const folder = await navigator.storage.getDirectory()
  const destination = await folder.getFileHandle('worker.jpg', { create: true })
  const settings = { ...order.settings, format: 'jpeg' } as const
  expect(await exportInWorker({ ...order, settings, destination }, () => undefined, never)).toBeNull()
  const bitmap = await createImageBitmap(await destination.getFile())
  expect([bitmap.width, bitmap.height]).toEqual([150, 300])
})

it('cancelled, it ends with the reason and leaves no file', async () => {
  const folder = await navigator.storage.getDirectory()
  const destination = await folder.getFileHandle('cancelled.tif', { create: true })
  const cancel = new AbortController()
  const exporting = exportInWorker({ ...order, destination }, () => cancel.abort(), cancel.signal)
  await expect(exporting).rejects.toThrow(/abort/i)
  await expect(folder.getFileHandle('cancelled.tif')).rejects.toThrow()
})

it('what cannot be a JPEG is refused in a sentence', async () => {
  const tooLong = { ...syntheticMosaic(2, 2), width: 66_000 }
  const settings = { ...order.settings, format: 'jpeg' } as const
  const exporting = exportInWorker({ ...order, sensor: tooLong, settings }, () => undefined, never)
  await expect(exporting).rejects.toThrow(/too large for a JPEG/)
})
