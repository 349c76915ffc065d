// A colour map of one's own outlasts the page and goes from person to person: kept, laid on again to the same pixels, exported to a
// file that can be read, removed, and brought back by handing that file over.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'

import { pictureAgain, pictureOtherThan, restingPicture } from '../support/picture-on-page.ts'
import { writeSlope } from '../support/slope-raw.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()
const frame = writeSlope(folder)

const site = journeySite()

async function openShelf(page: Page): Promise<string> {
  await page.locator('.start-ways input[type=file]:not([webkitdirectory])').setInputFiles(frame)
  await page.getByRole('heading', { name: 'Neutral' }).waitFor()
  await page.getByRole('tab', { name: 'Map shelf' }).click()
  return restingPicture(page)
}
const onShelf = (page: Page, name: string) => page.locator('.map-shelf').getByRole('button', { name, exact: true })
const awayFromMaps = (page: Page) => page.mouse.move(640, 20)

it(
  'a map is laid on, kept, found again after a reload, and brought back from its file',
  { timeout: 240_000 },
  async () => {
    const { page, faults } = await site.open()
    const plain = await openShelf(page)
    await onShelf(page, 'Straw light').click()
    await awayFromMaps(page)
    const mapped = await pictureOtherThan(page, plain)
    await page.getByRole('button', { name: 'Keep the frame’s mapping as a map' }).click()
    await page.keyboard.type('Evening reeds')
    await page.keyboard.press('Enter')
    await page.getByRole('button', { name: 'Undo: Colour map Straw light' }).click()
    await pictureAgain(page, plain)

    await page.reload()
    await openShelf(page)
    await onShelf(page, 'Evening reeds').click()
    await awayFromMaps(page)
    await pictureAgain(page, mapped)

    await page.getByRole('button', { name: 'More for Evening reeds' }).click()
    const downloading = page.waitForEvent('download')
    await page.getByRole('menuitem', { name: 'Export as a file' }).click()
    const download = await downloading
    expect(download.suggestedFilename()).toBe('Evening reeds.maps.json')
    const file = join(folder, 'Evening reeds.maps.json')
    await download.saveAs(file)
    const { maps } = JSON.parse(readFileSync(file, 'utf8'))
    expect(maps.map(({ name }: { name: string }) => name)).toEqual(['Evening reeds'])
    expect(maps[0].steps.map(({ operation }: { operation: string }) => operation)).toEqual(['channelMix', 'hueBands'])

    await page.getByRole('button', { name: 'More for Evening reeds' }).click()
    await page.getByRole('menuitem', { name: 'Remove from the shelf' }).click()
    await onShelf(page, 'Evening reeds').waitFor({ state: 'detached' })
    await page.getByLabel('File with colour maps').setInputFiles(file)
    await page.getByText(/1 colour map of “Evening reeds.maps.json” now stands on the shelf/).waitFor()
    await page
      .getByRole('button', { name: /^Evening reeds/ })
      .first()
      .waitFor()
    expect(faults).toEqual([])
    await page.context().close()
  },
)
