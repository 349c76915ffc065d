// Tones and readings in the real page: what the sensor clipped is told as counted from the file by a plain loop, marked in the
// picture and unmarked to the pixel; a curve drawn by keys changes picture, patches and output histogram, and undo all of it.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'

import { pictureAgain, pictureOtherThan, restingPicture } from '../support/picture-on-page.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { syntheticMosaic } from '../support/synthetic-mosaic.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const { width, height, codes, cfa, black, white } = syntheticMosaic(360, 240)
const frame = join(temporaryFolder(), 'slope.dng')
writeFileSync(frame, writeDng({ width, height, codes, cfa, black, white }))

const site = journeySite()

/** Share of the red photosites at or above white, in percent with two decimals: red stands where column and row are even. */
function clippedRedPercent(): string {
  const red = codes.filter((_, i) => (i % width) % 2 === 0 && Math.floor(i / width) % 2 === 0)
  return `${((100 * red.filter((code) => code >= white).length) / red.length).toFixed(2)} %`
}

const patchesOf = (page: Page) =>
  page
    .locator('.stop')
    .last()
    .locator('.patch')
    .evaluateAll((patches) => patches.map((patch) => (patch as HTMLElement).style.background))
const outputLines = (page: Page) =>
  page
    .locator('.histogram')
    .nth(1)
    .locator('.channel-plot path')
    .evaluateAll((paths) => paths.map((path) => path.getAttribute('d')))

it('tells and marks what is clipped, and follows a curve drawn by keys', async () => {
  const { page, faults } = await site.open()
  await page.locator('.start-ways input[type=file]:not([webkitdirectory])').setInputFiles(frame)
  await page.getByRole('heading', { name: 'Neutral', exact: true }).waitFor()
  const opened = await restingPicture(page)

  const table = page.getByRole('table', { name: 'Photosites at the ends, before any gain' })
  expect(await table.getByRole('row', { name: 'Red' }).innerText()).toContain(clippedRedPercent())
  await page.keyboard.press('l')
  await pictureOtherThan(page, opened)
  await page.keyboard.press('l')
  await page.keyboard.press('l')
  await pictureAgain(page, opened)

  await expect.poll(() => outputLines(page), { timeout: 60_000 }).toHaveLength(3)
  const [patches, lines] = [await patchesOf(page), await outputLines(page)]
  expect(patches).toHaveLength(5)
  await page.getByRole('button', { name: 'Add a step' }).click()
  await page.getByRole('menuitem', { name: 'Tone curve' }).click()
  await page.getByRole('slider', { name: 'Point 1 of 2' }).focus()
  await page.keyboard.press('Enter')
  await page.getByRole('slider', { name: 'Point 2 of 3' }).focus()
  for (let i = 0; i < 12; i++) await page.keyboard.press('ArrowDown')
  await pictureOtherThan(page, opened)
  await expect.poll(() => patchesOf(page)).not.toEqual(patches)
  await expect.poll(() => outputLines(page), { timeout: 60_000 }).not.toEqual(lines)

  for (let i = 0; i < 14; i++) await page.keyboard.press('Control+z')
  await pictureAgain(page, opened)
  await expect.poll(() => patchesOf(page)).toEqual(patches)
  await expect.poll(() => outputLines(page), { timeout: 60_000 }).toEqual(lines)
  expect(faults).toEqual([])
  await page.context().close()
})
