// The board with the keyboard alone in the real page: a raw file, two marks from the probe, a name, a blend, a neutral adopted
// and the board as one sheet, whose size exiftool reads.
import { writeFileSync } from 'node:fs'
import { basename, join } from 'node:path'
import { expect, it } from 'vitest'

import { layoutSheet } from '../../src/workbench/sheet-layout.ts'
import { hasTool, readMetadata } from '../support/outside-tools.ts'
import { fileOnEnter, openOnEnter, press, tabTo } from '../support/page-keys.ts'
import { pictureAgain, pictureOtherThan, restingPicture } from '../support/picture-on-page.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { syntheticMosaic } from '../support/synthetic-mosaic.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()

const site = journeySite()

it.skipIf(!hasTool('exiftool'))('goes from probe to sheet by keys alone (skipped without exiftool)', async () => {
  const { width, height, codes, cfa, black, white } = syntheticMosaic(720, 480)
  const raw = join(folder, 'slope.dng')
  writeFileSync(raw, writeDng({ width, height, codes, cfa, black, white }))
  const { page, faults } = await site.open()
  await openOnEnter(page, /^Open photographs…$/, raw)
  await page.getByRole('heading', { name: 'Neutral', exact: true }).waitFor()
  const opened = await restingPicture(page)

  await tabTo(page, /^Probe/)
  await press(page, 'Enter', 'Shift+ArrowLeft', 'Shift+ArrowLeft', 'm')
  await press(
    page,
    'Shift+ArrowRight',
    'Shift+ArrowRight',
    'Shift+ArrowRight',
    'Shift+ArrowDown',
    'Shift+Enter',
    'Escape',
  )
  const marks = page.getByRole('list', { name: 'Marks' }).getByRole('listitem')
  expect(await marks.count()).toBe(2)
  await pictureAgain(page, opened)

  await tabTo(page, /^A: red/)
  await press(page, 'F2')
  await page.keyboard.type('near bank')
  await press(page, 'Enter')
  await page.getByRole('button', { name: /^near bank: red/ }).waitFor()
  const previewed = await pictureOtherThan(page, opened)

  await tabTo(page, /^Blend near bank$/)
  await press(page, 'Space')
  await tabTo(page, /^near bank: red/, 'Shift+Tab')
  await press(page, 'ArrowDown')
  await tabTo(page, /^Blend B$/)
  await press(page, 'Space')
  await tabTo(page, /^Share of B$/)
  await press(page, 'PageUp')
  await tabTo(page, /^Keep as a mark$/)
  await press(page, 'Enter')
  await page.getByRole('button', { name: /^near bank 40 : 60 B: red/ }).waitFor()

  await tabTo(page, /^B: red/)
  await press(page, 'ArrowUp', 'Enter')
  await page.getByRole('button', { name: 'Undo: Neutral of near bank' }).waitFor()
  await tabTo(page, /^Export$/)
  await pictureAgain(page, previewed)

  await tabTo(page, /^Save the board as one sheet$/)
  const sheet = await fileOnEnter(page, folder)
  expect(basename(sheet)).toBe('slope-board.png')
  const facts = readMetadata(sheet)
  const size = layoutSheet(3, { width: 640, height: Math.floor((height * 640) / width) })
  expect(facts['File:FileType']).toBe('PNG')
  expect([facts['PNG:ImageWidth'], facts['PNG:ImageHeight']]).toEqual([size.width, size.height])
  expect(faults).toEqual([])
  await page.context().close()
})
