// Edits outlast the page: after a reload the same file has its chain, marks and filter again and looks the same to the pixel,
// also where the page went away right after the last change. The edit file that is loaded here is written out by hand.
import { readFileSync, writeFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'

import { pictureAgain, pictureOtherThan, restingPicture } from '../support/picture-on-page.ts'
import { writeSlope } from '../support/slope-raw.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()
const frame = writeSlope(folder)

const step = (operation: string, values: object, mask?: object) => ({
  id: `${operation}-1`,
  operation,
  version: 1,
  enabled: true,
  values,
  ...(mask && { mask }),
})
const roundArea = {
  parts: [
    {
      kind: 'radial',
      combine: 'or',
      inverted: false,
      values: { centre: [0.4, 0.6], halfWidth: 0.3, halfHeight: 0.2, softness: 0.5 },
    },
  ],
  inverted: false,
  strength: 0.8,
}
const marks = [
  { id: 'm2', name: 'gate', place: { x: 0.5, y: 0.25 }, gains: { redStops: -1.5, blueStops: 1.25 }, pinned: true },
  { id: 'm1', name: 'gravel', place: null, gains: { redStops: 0.5, blueStops: -2 }, pinned: false },
]
const walk = {
  app: 'rimeleaf',
  version: 2,
  filterNm: 665,
  chain: [
    step('neutral', { redStops: -1.5, blueStops: 1.25 }),
    step('secondLight', { redStops: -0.4, blueStops: 0.5, way: 'graduated', ends: [0.2, 0.5, 0.8, 0.5] }),
    step('hueTurn', { angleDeg: 90 }, roundArea),
    step('outputTransform', {}),
  ],
  marks,
}
const walkFile = join(folder, 'walk.edit.json')
writeFileSync(walkFile, JSON.stringify(walk))
const letterFile = join(folder, 'letter.json')
writeFileSync(letterFile, '{"greeting": "Dear reader"}')

const site = journeySite()

async function openFrame(page: Page): Promise<string> {
  await page.locator('.start-ways input[type=file]:not([webkitdirectory])').setInputFiles(frame)
  await page.getByRole('heading', { name: 'Neutral', exact: true }).waitFor()
  return restingPicture(page)
}

async function chooseInEditMenu(page: Page, item: string): Promise<void> {
  await page.getByRole('button', { name: 'edit kept' }).click()
  await page.getByRole('button', { name: item }).click()
}

async function loadEdit(page: Page, path: string): Promise<void> {
  const choosing = page.waitForEvent('filechooser')
  await chooseInEditMenu(page, 'Load an edit file…')
  await (await choosing).setFiles(path)
}

async function savedEdit(page: Page): Promise<typeof walk> {
  const downloading = page.waitForEvent('download')
  await chooseInEditMenu(page, 'Save as an edit file…')
  const download = await downloading
  expect(download.suggestedFilename()).toBe('slope.edit.json')
  const path = join(folder, 'saved.edit.json')
  await download.saveAs(path)
  return JSON.parse(readFileSync(path, 'utf8'))
}

it('an edit comes from a file, outlasts the page to the pixel, goes back to the opening chain and is forgotten', async () => {
  const { page, faults } = await site.open()
  const opening = await openFrame(page)

  await loadEdit(page, letterFile)
  await page.getByText(/“letter.json” cannot be used as an edit file, at app: /).waitFor()
  await page.getByRole('button', { name: 'Dismiss' }).click()
  expect(await restingPicture(page)).toBe(opening)
  expect(await page.getByRole('button', { name: /^Undo: / }).count()).toBe(0)

  await loadEdit(page, walkFile)
  await page.getByText(/It brought 2 marks. Its filter is stated for this frame./).waitFor()
  await page.getByRole('button', { name: 'Dismiss' }).click()
  const loaded = await pictureOtherThan(page, opening)
  await page.getByRole('button', { name: 'Undo: Edit from walk.edit.json' }).waitFor()
  await page.getByRole('button', { name: 'filter 665 nm' }).waitFor()

  await page.getByRole('button', { name: 'Add a step' }).click()
  await page.getByRole('menuitem', { name: 'Channel mix' }).click()
  await page.getByRole('button', { name: 'Exchange red and blue' }).click()
  await pictureOtherThan(page, loaded)
  await page.getByRole('button', { name: /^Undo/ }).click()
  await page.getByRole('button', { name: /^Undo/ }).click()
  await page.reload()

  expect(await openFrame(page)).toBe(loaded)
  await page.getByRole('button', { name: 'filter 665 nm' }).waitFor()
  const saved = await savedEdit(page)
  expect(saved).toMatchObject({ app: 'rimeleaf', filterNm: 665, chain: walk.chain })
  expect(saved.marks.map(({ name, gains, place, pinned }) => ({ name, gains, place, pinned }))).toEqual(
    marks.map(({ id: _id, ...mark }) => mark),
  )

  // The opening chain follows the filter stated now; taking it is undone like any change.
  await chooseInEditMenu(page, 'Back to the opening chain')
  await pictureOtherThan(page, loaded)
  await page.getByRole('button', { name: 'Undo: Back to the opening chain' }).click()
  await pictureAgain(page, loaded)

  await page.getByRole('button', { name: 'Help and keys' }).click()
  await page.getByText('The edit of 1 photograph is kept now.').waitFor()
  await page.getByRole('button', { name: 'Forget what is kept…' }).click()
  await page.getByRole('button', { name: 'Forget for good' }).click()
  await page.getByText('Nothing is kept now.').waitFor()
  await page.reload()
  expect(await openFrame(page)).toBe(opening)
  await page.getByRole('button', { name: 'filter not stated' }).waitFor()
  expect(faults).toEqual([])
  await page.context().close()
})
