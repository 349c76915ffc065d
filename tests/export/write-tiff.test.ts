// TIFF files as programs outside the project read them: libtiff (tiffinfo), libvips (vips) and exiftool.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'
import { refuseLargeTiff } from '../../src/export/write-tiff.ts'
import { deflateIsYounger, hasTool, say, structureFaults } from '../support/outside-tools.ts'
import { syntheticPicture, syntheticSamples } from '../support/synthetic-picture.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { exportToFile } from './export-job.ts'

const folder = temporaryFolder()

it.skipIf(!hasTool('vips')).each([16, 8] as const)(
  'libvips reads every %i-bit sample back (skipped without vips)',
  async (bits) => {
    const path = join(folder, `read-back-${bits}.tif`)
    await exportToFile(path, { format: bits === 16 ? 'tiff16' : 'tiff8' })
    say('vips', ['rawsave', path, `${path}.raw`])
    const raw = readFileSync(`${path}.raw`)
    const expected = syntheticSamples(301, 203, bits)
    expect(Buffer.compare(raw, Buffer.from(expected.buffer))).toBe(0)
  },
)

it.skipIf(!hasTool('tiffinfo'))('libtiff finds nothing to warn about (skipped without tiffinfo)', async () => {
  const path = join(folder, 'info.tif')
  await exportToFile(path)
  const report = say('tiffinfo', [path])
  expect(report).not.toMatch(/warning|error/i)
  expect(report).toMatch(/Image Width: 301 Image Length: 203/)
  expect(report).toMatch(/Bits\/Sample: 16/)
  expect(report).toMatch(/Compression Scheme: AdobeDeflate/)
  expect(report).toMatch(/Predictor: horizontal differencing/)
})

it.skipIf(!hasTool('exiftool')).each(['tiff16', 'tiff8'] as const)(
  '%s: exiftool objects to nothing but the age of the compression (skipped without exiftool)',
  async (format) => {
    const path = join(folder, `clean-${format}.tif`)
    await exportToFile(path, { format })

    expect(structureFaults(path).filter((fault) => fault !== deflateIsYounger)).toEqual([])
  },
)

it('refuses what 32-bit offsets cannot reach, and says what to do', () => {
  expect(() => refuseLargeTiff(syntheticPicture(30_000, 24_000), 16)).toThrow(/4 GiB.*8 bits/)
  expect(() => refuseLargeTiff(syntheticPicture(30_000, 23_000), 16)).not.toThrow()
  expect(() => refuseLargeTiff(syntheticPicture(30_000, 24_000), 8)).not.toThrow()
})
