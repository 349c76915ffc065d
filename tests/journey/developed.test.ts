// A JPEG as a compact gives it: opened, marked as having less room, finished, exported, and read by an outside tool.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import encodeJpeg from '@jsquash/jpeg/encode.js'
import { beforeAll, expect, it } from 'vitest'

import { prepareJpegEncoder } from '../../src/commands/node-jpeg.ts'
import { hasTool, readMetadata } from '../support/outside-tools.ts'
import { pictureOtherThan, restingPicture } from '../support/picture-on-page.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()
const [width, height] = [360, 240]

const site = journeySite()
beforeAll(prepareJpegEncoder)

it.skipIf(!hasTool('exiftool'))('a JPEG goes all the way (skipped without exiftool)', async () => {
  const data = new Uint8ClampedArray(width * height * 4).fill(255)
  for (let i = 0; i < width * height; i++)
    data.set([90 + ((i % width) * 140) / width, 60 + (i / width / height) * 120, 50], i * 4)
  const jpeg = await encodeJpeg({ data, width, height, colorSpace: 'srgb' } as ImageData, { quality: 92 })
  const path = join(folder, 'heath-07.jpg')
  writeFileSync(path, new Uint8Array(jpeg))

  const { page, faults } = await site.open()
  await page.locator('.start-ways input[type=file]:not([webkitdirectory])').setInputFiles(path)
  await page.getByRole('heading', { name: 'Neutral', exact: true }).waitFor()
  await page.getByText(/8 bits per channel leave less room than a raw file/).waitFor()
  await page.getByText('The file names no colour space: its numbers are taken as sRGB.').waitFor()
  const opened = await restingPicture(page)

  await page.getByRole('button', { name: 'Add a step' }).click()
  await page.getByRole('menuitem', { name: 'Channel mix' }).click()
  await page.getByRole('button', { name: 'Exchange red and blue' }).click()
  await pictureOtherThan(page, opened)

  await page.getByRole('button', { name: 'Export', exact: true }).click()
  const downloading = page.waitForEvent('download')
  await page.getByRole('dialog').getByRole('button', { name: 'Export', exact: true }).click()
  const download = await downloading
  const exported = join(folder, download.suggestedFilename())
  await download.saveAs(exported)
  expect(readMetadata(exported)).toMatchObject({ 'IFD0:ImageWidth': width, 'IFD0:ImageHeight': height })
  expect(faults).toEqual([])
  await page.context().close()
})
