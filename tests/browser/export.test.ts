// Exporting in a browser: workers, a file handle of the browser's own disk, and Chromium as the outside reader of the JPEG.
import Color from 'colorjs.io'
import { afterAll, expect, it } from 'vitest'
import { blobSink } from '../../src/export/blob-sink.ts'
import { exportPicture, type ExportJob } from '../../src/export/export-picture.ts'
import { fileHandleSink } from '../../src/export/file-handle-sink.ts'
import { packStrip } from '../../src/export/pack-strip.ts'
import { openStripPackers } from '../../src/export/strip-packers.ts'
import { syntheticPicture, syntheticSamples } from '../support/synthetic-picture.ts'

const [width, height] = [240, 180]
const packers = openStripPackers()
afterAll(() => packers.close())

type Changes = Partial<ExportJob> & Pick<ExportJob, 'sink'>
const exportSynthetic = (changes: Changes) =>
  exportPicture({
    picture: syntheticPicture(width, height),
    metadata: { make: 'Fennel' },
    format: 'tiff16',
    space: 'srgb',
    quality: 92,
    keepLocation: false,
    ...packers,
    signal: new AbortController().signal,
    onProgress: () => undefined,
    ...changes,
  })

const bytesOf = async (file: Blob) => new Uint8Array(await file.arrayBuffer())

it.each(['tiff16', 'tiff8'] as const)(
  '%s: workers and a file on disk give the bytes of one thread in memory',
  async (format) => {
    const inMemory = blobSink()
    await exportSynthetic({ format, sink: inMemory, packStrip, packers: 1 })
    const folder = await navigator.storage.getDirectory()
    const handle = await folder.getFileHandle(`${format}.tif`, { create: true })
    await exportSynthetic({ format, sink: await fileHandleSink(handle) })
    expect(await bytesOf(await handle.getFile())).toEqual(await bytesOf(inMemory.file()))
  },
)

it('the browser decodes the JPEG within a mean ΔE00 of .5', async () => {
  const sink = blobSink()
  await exportSynthetic({ format: 'jpeg', sink })
  const bitmap = await createImageBitmap(sink.file())
  expect([bitmap.width, bitmap.height]).toEqual([width, height])
  const context = new OffscreenCanvas(width, height).getContext('2d')!
  context.drawImage(bitmap, 0, 0)
  const decoded = context.getImageData(0, 0, width, height).data
  const expected = syntheticSamples(width, height, 8)
  const lab = (samples: ArrayLike<number>, at: number) =>
    new Color('srgb', [samples[at] / 255, samples[at + 1] / 255, samples[at + 2] / 255]).to('lab')
  const pixels = Array.from({ length: Math.floor((width * height) / 11) }, (_, i) => 11 * i)
  const sum = pixels.reduce((total, i) => total + lab(decoded, 4 * i).deltaE(lab(expected, 3 * i), '2000'), 0)
  expect(sum / pixels.length).toBeLessThanOrEqual(0.5)
})

it('a cancelled export leaves no file where there was none, and an older one as it was', async () => {
  const folder = await navigator.storage.getDirectory()
  const older = await folder.getFileHandle('older.tif', { create: true })
  const writing = await older.createWritable()
  await writing.write('older content')
  await writing.close()
  const fresh = await folder.getFileHandle('fresh.tif', { create: true })
  for (const handle of [older, fresh]) {
    const cancel = new AbortController()
    const exporting = exportSynthetic({
      sink: await fileHandleSink(handle),
      signal: cancel.signal,
      onProgress: () => cancel.abort(),
    })
    await expect(exporting).rejects.toThrow(/abort/i)
  }
  expect(await (await older.getFile()).text()).toBe('older content')
  await expect(folder.getFileHandle('fresh.tif')).rejects.toThrow()
})
