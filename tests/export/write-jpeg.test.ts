// JPEG files as libjpeg-turbo (through libvips) and exiftool read them; colour differences by colorjs.io.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import Color from 'colorjs.io'
import { beforeAll, expect, it } from 'vitest'
import { prepareJpegEncoder } from '../../src/commands/node-jpeg.ts'
import { refuseLargeJpeg } from '../../src/export/write-jpeg.ts'
import { hasTool, say, structureFaults } from '../support/outside-tools.ts'
import { syntheticPicture, syntheticSamples } from '../support/synthetic-picture.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { exportToFile } from './export-job.ts'

const folder = temporaryFolder()
beforeAll(prepareJpegEncoder)

const labOf = (samples: Uint8Array, at: number) =>
  new Color('srgb', [samples[at] / 255, samples[at + 1] / 255, samples[at + 2] / 255]).to('lab')

it.skipIf(!hasTool('vips'))('decoded elsewhere, mean ΔE00 stays within .5 (skipped without vips)', async () => {
  const path = join(folder, 'read-back.jpg')
  await exportToFile(path, { format: 'jpeg' })
  say('vips', ['rawsave', path, `${path}.raw`])
  const decoded = readFileSync(`${path}.raw`)
  const expected = syntheticSamples(301, 203, 8) as Uint8Array
  expect(decoded.length).toBe(expected.length)
  let sum = 0
  let count = 0
  for (let at = 0; at < expected.length; at += 3 * 7) {
    sum += labOf(decoded, at).deltaE(labOf(expected, at), '2000')
    count++
  }
  expect(sum / count).toBeLessThanOrEqual(0.5)
})

it.skipIf(!hasTool('exiftool'))(
  'is structurally clean for exiftool and not subsampled (skipped without it)',
  async () => {
    const path = join(folder, 'clean.jpg')
    await exportToFile(path, { format: 'jpeg', space: 'display-p3' })
    expect(structureFaults(path)).toEqual([])
    expect(say('exiftool', ['-s3', '-YCbCrSubSampling', path])).toMatch(/4:4:4/)
  },
)

it('refuses pictures the encoder has no memory for, and says what to do', () => {
  expect(() => refuseLargeJpeg(syntheticPicture(12_000, 9_000))).toThrow(/too large for a JPEG.*TIFF/)
  expect(() => refuseLargeJpeg(syntheticPicture(9_504, 6_336))).not.toThrow()
})
