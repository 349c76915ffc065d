// Colour tables in the real page: one that is dropped changes the picture and is there after a reload, a broken one is refused by
// line, and a step that was saved as a table holds its nodes and comes in again.
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

/** Red and blue exchanged, in eight corners. */
const exchange = 'TITLE "Exchange"\nLUT_3D_SIZE 2\n0 0 0\n0 0 1\n0 1 0\n0 1 1\n1 0 0\n1 0 1\n1 1 0\n1 1 1\n'

const site = journeySite()

async function openFrame(page: Page): Promise<string> {
  await page.locator('.start-ways input[type=file]:not([webkitdirectory])').setInputFiles(frame)
  await page.getByRole('button', { name: 'Add a step' }).waitFor()
  return restingPicture(page)
}

async function drop(page: Page, name: string, text: string): Promise<void> {
  const bag = await page.evaluateHandle(
    ([fileName, content]) => {
      const transfer = new DataTransfer()
      transfer.items.add(new File([content], fileName))
      return transfer
    },
    [name, text],
  )
  await page.dispatchEvent('body', 'drop', { dataTransfer: bag })
}

it('a dropped table changes the picture and outlasts the page; a broken one is refused by line', async () => {
  const { page, faults } = await site.open()
  const opening = await openFrame(page)
  await drop(page, 'exchange.cube', exchange)
  await page.getByRole('heading', { name: 'Colour table', exact: true }).waitFor()
  await page.getByText('A cube of 2 points a side.').waitFor()
  const exchanged = await pictureOtherThan(page, opening)

  await drop(page, 'torn.cube', exchange.slice(0, 60))
  await page.getByText(/“torn\.cube” cannot be used as a colour table, line \d: /).waitFor()
  await page.getByRole('button', { name: 'Dismiss' }).click()
  await pictureAgain(page, exchanged)

  await expect.poll(() => page.evaluate(async () => (await indexedDB.databases()).length)).toBe(1)
  await page.waitForTimeout(1000)
  await page.reload()
  await openFrame(page)
  await pictureAgain(page, exchanged)
  expect(faults).toEqual([])
})

it('a hue turn saved as CLF stands in it exactly, and comes in again as a table that undo takes back', async () => {
  const { page, faults } = await site.open()
  await openFrame(page)
  await page.getByRole('button', { name: 'Add a step' }).click()
  await page.getByRole('menuitem', { name: 'Hue turn' }).click()
  await page.getByRole('button', { name: 'Invert hues' }).click()

  await page.getByRole('button', { name: 'edit kept' }).click()
  await page.getByRole('button', { name: 'Save as a colour table…' }).click()
  const dialog = page.getByRole('dialog', { name: 'Save as a colour table' })
  await dialog.getByRole('textbox', { name: 'Name' }).fill('Turned')
  await dialog.getByRole('button', { name: /File/ }).click()
  await page.getByRole('option', { name: 'CLF' }).click()
  await dialog.getByRole('row', { name: 'spread evenly 0 0 0' }).waitFor()
  const downloading = page.waitForEvent('download')
  await dialog.getByRole('button', { name: 'Save', exact: true }).click()
  const download = await downloading
  expect(download.suggestedFilename()).toBe('turned.clf')
  const path = join(folder, 'turned.clf')
  await download.saveAs(path)
  const text = readFileSync(path, 'utf8')
  expect(text.match(/<(Matrix|Exponent|Log|LUT\dD) /g)).toEqual([
    '<Matrix ',
    '<Exponent ',
    '<Matrix ',
    '<Exponent ',
    '<Matrix ',
  ])

  await page.getByRole('button', { name: 'Remove', exact: true }).click()
  const without = await restingPicture(page)
  await drop(page, 'turned.clf', text)
  await page.getByText(/It was sampled/).waitFor()
  await pictureOtherThan(page, without)
  await page.getByRole('button', { name: 'Undo: Colour table Turned' }).click()
  await pictureAgain(page, without)
  expect(faults).toEqual([])
})
