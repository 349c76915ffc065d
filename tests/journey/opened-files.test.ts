// Files of one's own through the page's file chooser: a camera's raw file to a JPEG that exiftool finds no fault with, and a
// file that is no raw at all, after which work goes on.
import { existsSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { fileURLToPath } from 'node:url'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'

import { hasTool, readMetadata, structureFaults } from '../support/outside-tools.ts'
import { pictureOtherThan, pointAt, restingPicture } from '../support/picture-on-page.ts'
import { writeSlope } from '../support/slope-raw.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()
const cameraRaw = fileURLToPath(new URL('../../../shared/data/raw/dc50.kdc', import.meta.url))
const canRun = existsSync(cameraRaw) && hasTool('exiftool')

const site = journeySite()

/** The chooser of files on the start screen; the other chooser takes folders. */
const fileChooser = (page: Page) => page.locator('.start-ways input[type=file]:not([webkitdirectory])')

it.skipIf(!canRun)(
  'a camera’s raw file goes to a JPEG without faults (skipped without exiftool or dc50.kdc beside the repository)',
  async () => {
    const { page, faults } = await site.open()
    await fileChooser(page).setInputFiles(cameraRaw)
    await page.getByRole('heading', { name: 'Neutral' }).waitFor()
    const opened = await restingPicture(page)

    await page.getByRole('button', { name: 'Probe', exact: true }).click()
    await pointAt(page, 0.5, 0.7)
    await pictureOtherThan(page, opened)
    await page.mouse.down()
    await page.mouse.up()
    await pointAt(page, 0.01, 0.01)
    const committed = await restingPicture(page)
    expect(committed).not.toBe(opened)

    await page.getByRole('button', { name: 'Add a step' }).click()
    await page.getByRole('menuitem', { name: 'Channel mix' }).click()
    await page.getByRole('button', { name: 'Exchange red and blue' }).click()
    await pictureOtherThan(page, committed)

    await page.getByRole('button', { name: 'Export', exact: true }).click()
    const dialog = page.getByRole('dialog')
    await dialog.getByRole('button', { name: 'Format' }).click()
    await page.getByRole('option', { name: 'JPEG' }).click()
    const downloading = page.waitForEvent('download')
    await dialog.getByRole('button', { name: 'Export', exact: true }).click()
    const download = await downloading
    expect(download.suggestedFilename()).toBe('dc50.jpg')
    const exported = join(folder, 'dc50.jpg')
    await download.saveAs(exported)
    expect(structureFaults(exported)).toEqual([])
    const facts = readMetadata(exported)
    expect(facts['File:FileType']).toBe('JPEG')
    expect(facts['IFD0:Software']).toMatch(/^Rimeleaf /)
    expect(faults).toEqual([])
    await page.context().close()
  },
)

it('a file that is no raw says so where its picture would be, and another file opens beside it', async () => {
  const { page, faults } = await site.open()
  const letter = join(folder, 'letter.dng')
  writeFileSync(letter, 'Dear reader, these are words and no picture.\n'.repeat(40))
  await fileChooser(page).setInputFiles(letter)
  await page.getByRole('heading', { name: 'letter.dng could not be opened' }).waitFor()
  expect(await page.locator('.picture-state p').innerText()).toMatch(/letter\.dng/)

  const slope = writeSlope(folder)
  await page.getByRole('button', { name: 'letter.dng', exact: true }).click()
  const chooser = page.waitForEvent('filechooser')
  await page.getByRole('button', { name: 'Open photographs…' }).click()
  await (await chooser).setFiles(slope)
  await page.getByText('frame 2 of 2').waitFor()
  await page.getByRole('heading', { name: 'Neutral' }).waitFor()
  expect(await page.getByRole('dialog').count()).toBe(0)
  await restingPicture(page)
  expect(faults).toEqual([])
  await page.context().close()
})
