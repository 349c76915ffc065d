// The main job as a person does it, in a real browser: demo roll, probe, neutral, exchange, export; exiftool judges the file.
import { join } from 'node:path'
import { expect, it } from 'vitest'

import { deflateIsYounger, hasTool, readMetadata, structureFaults } from '../support/outside-tools.ts'
import { pictureAgain, pictureOtherThan, pointAt, restingPicture } from '../support/picture-on-page.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()

const site = journeySite()

it.skipIf(!hasTool('exiftool'))(
  'goes from the demo roll to a valid 16-bit TIFF (skipped without exiftool)',
  async () => {
    const { page, faults } = await site.open()
    await page.getByRole('button', { name: 'Open the demo roll' }).click()
    await page.getByRole('heading', { name: 'Neutral' }).waitFor({ timeout: 200_000 })
    const opened = await restingPicture(page)
    const probe = page.getByRole('button', { name: 'Probe', exact: true })

    await probe.click()
    await pointAt(page, 0.5, 0.85)
    await pictureOtherThan(page, opened)
    await page.keyboard.press('Escape')
    await pointAt(page, 0.01, 0.01)
    await pictureAgain(page, opened)

    await probe.click()
    await pointAt(page, 0.5, 0.85)
    await pictureOtherThan(page, opened)
    await page.mouse.down()
    await page.mouse.up()
    await pointAt(page, 0.01, 0.01)
    const committed = await restingPicture(page)
    expect(committed).not.toBe(opened)

    await page.getByText('Channel mix').first().click()
    await page.getByRole('button', { name: 'Exchange red and blue' }).click()
    await pictureOtherThan(page, committed)
    await page.keyboard.press('Control+z')
    await pictureAgain(page, committed)

    await page.getByRole('button', { name: 'Export', exact: true }).click()
    const downloading = page.waitForEvent('download', { timeout: 200_000 })
    await page.getByRole('dialog').getByRole('button', { name: 'Export' }).click()
    const exported = join(folder, 'exported.tif')
    await (await downloading).saveAs(exported)
    expect(structureFaults(exported).filter((fault) => fault !== deflateIsYounger)).toEqual([])
    const facts = readMetadata(exported)
    expect(facts['IFD0:BitsPerSample']).toBe('16 16 16')
    expect(facts['IFD0:Software']).toMatch(/^Rimeleaf /)
    expect(faults).toEqual([])
    await page.context().close()
  },
)
