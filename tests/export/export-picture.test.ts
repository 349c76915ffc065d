// A file appears under its final name only when it is whole: cancelling or failing anywhere leaves the folder empty.
import { mkdtempSync, readdirSync } from 'node:fs'
import { join } from 'node:path'
import { beforeAll, expect, it } from 'vitest'
import { fileSink } from '../../src/commands/file-sink.ts'
import { prepareJpegEncoder } from '../../src/commands/node-jpeg.ts'
import { syntheticPicture } from '../support/synthetic-picture.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { exportToFile } from './export-job.ts'

const folder = temporaryFolder()
const emptyFolder = () => mkdtempSync(join(folder, 'export-'))
beforeAll(prepareJpegEncoder)

const formats = ['tiff16', 'jpeg'] as const
const large = () => syntheticPicture(64, 1024)

it.each(formats)('%s: cancelled half way, nothing is left', async (format) => {
  const place = emptyFolder()
  const cancel = new AbortController()
  const onProgress = (fraction: number) => fraction >= 0.25 && cancel.abort()
  const exporting = exportToFile(join(place, 'picture'), {
    format,
    picture: large(),
    signal: cancel.signal,
    onProgress,
  })
  await expect(exporting).rejects.toThrow(/abort/i)
  expect(readdirSync(place)).toEqual([])
})

it.each(formats)('%s: the renderer fails, nothing is left', async (format) => {
  const place = emptyFolder()
  const exporting = exportToFile(join(place, 'picture'), { format, picture: syntheticPicture(64, 1024, 2) })
  await expect(exporting).rejects.toThrow('on purpose')
  expect(readdirSync(place)).toEqual([])
})

it.each(formats)('%s: the disk fills up, nothing is left', async (format) => {
  const place = emptyFolder()
  const sink = await fileSink(join(place, 'picture'))
  const full = { ...sink, append: () => Promise.reject(new Error('No space left on purpose.')) }
  await expect(exportToFile(join(place, 'picture'), { format, sink: full })).rejects.toThrow('on purpose')
  expect(readdirSync(place)).toEqual([])
})

it('while it is written the file has another name, then only its own', async () => {
  const place = emptyFolder()
  const seen = new Set<string>()
  const onProgress = () => readdirSync(place).forEach((name) => seen.add(name))
  await exportToFile(join(place, 'picture.tif'), { onProgress })
  expect([...seen]).toEqual(['picture.tif.part'])
  expect(readdirSync(place)).toEqual(['picture.tif'])
})

it('reports progress that never falls and ends at 1', async () => {
  for (const format of formats) {
    const fractions: number[] = []
    await exportToFile(join(emptyFolder(), 'picture'), {
      format,
      picture: large(),
      onProgress: (fraction) => fractions.push(fraction),
    })
    expect(fractions).toEqual(fractions.toSorted((a, b) => a - b))
    expect(fractions.at(-1)).toBe(1)
  }
})
