// The neutral by keys alone in the real page: suggestions, marks in order, sample and outline, divided picture, typed values, the
// plane, a shade that is found, and an edit taken back from its file. What comes out is read from the page, its canvas and its files.
import { writeFileSync } from 'node:fs'
import { join } from 'node:path'
import { expect, it } from 'vitest'

import { chooseListed, focusedName, goAlong, openOnEnter, press, savedEdit, tabTo } from '../support/page-keys.ts'
import { pictureAgain, pictureOtherThan, restingPicture } from '../support/picture-on-page.ts'
import { writeDng } from '../support/synthetic-dng.ts'
import { makeMosaic } from '../support/synthetic-sensor.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()
const site = journeySite()

/** Squares of three materials; the right half lies in bluer shade, two stops down. */
function writeSunAndShade(): string {
  const materials = [
    [0.7, 0.25, 0.12],
    [0.55, 0.28, 0.2],
    [0.5, 0.12, 0.04],
  ]
  const [width, height] = [480, 320]
  const { codes, cfa, black, white } = makeMosaic({
    width,
    height,
    light(x, y, colour) {
      const material = materials[(Math.floor(x / 40) + 2 * Math.floor(y / 40)) % 3]
      const shade = x < width / 2 ? 1 : 0.25 * [0.9, 1, 1.15][colour]
      return material[colour] * shade
    },
    noise: { fullScaleElectrons: 40_000, readNoiseElectrons: 3, seed: 5 },
  })
  const path = join(folder, 'court.dng')
  writeFileSync(path, writeDng({ width, height, codes, cfa, black, white }))
  return path
}

it('does all of the neutral by keys alone', async () => {
  const { page, faults } = await site.open()
  const names = () => page.locator('.mark .mark-name').allTextContents()
  const undoes = (what: string) => page.getByRole('button', { name: `Undo: ${what}` }).waitFor()
  await openOnEnter(page, /^Open photographs…$/, writeSunAndShade())
  await page.getByRole('heading', { name: 'Suggested' }).waitFor()
  const opened = await restingPicture(page)

  // Suggestions: tried by going along them, kept as marks, taken.
  await tabTo(page, /; red .* stop/)
  const first = await focusedName(page)
  await press(page, 'ArrowDown')
  expect(await focusedName(page)).not.toBe(first)
  await pictureOtherThan(page, opened)
  await tabTo(page, /^Keep as a mark: /)
  await press(page, 'Enter')
  await expect.poll(names).toEqual(['A'])
  await tabTo(page, /; red .* stop/, 'Shift+Tab')
  await press(page, 'Enter')
  await undoes('Suggested neutral')
  await tabTo(page, /^\d+ more$/)
  await press(page, 'Enter')
  await pictureOtherThan(page, opened)
  await page.getByRole('heading', { name: 'Averages of the whole frame' }).waitFor()

  // A smaller sample, an outline of three corners, and both halves of a divided picture.
  await tabTo(page, /^Probe/)
  await press(page, 'Enter', 'Shift+ArrowLeft', ',', ',', 'm')
  await expect.poll(names).toEqual(['A', 'B'])
  await press(page, 'o', ' ', 'Shift+ArrowRight', ' ', 'Shift+ArrowDown', ' ', 'Enter', 'm')
  await expect.poll(names).toEqual(['A', 'B', 'C'])
  await press(page, 'Escape')
  await tabTo(page, /^Export$/)
  const whole = await restingPicture(page)
  await press(page, 'd')
  await tabTo(page, /^Where the picture is divided$/)
  const line = page.getByRole('slider', { name: 'Where the picture is divided' })
  const stoodAt = await line.getAttribute('aria-valuenow')
  await press(page, 'ArrowRight', 'ArrowRight')
  expect(await line.getAttribute('aria-valuenow')).not.toBe(stoodAt)
  await press(page, 'd')
  await tabTo(page, /^Export$/)
  await pictureAgain(page, whole)

  // Marks: in another order, pinned, named, gone and back.
  await tabTo(page, /^[ABC]: red/)
  await goAlong(page, /^C: red/)
  await press(page, 'Shift+ArrowUp')
  await expect.poll(names).toEqual(['A', 'C', 'B'])
  await tabTo(page, /^More for C$/)
  await press(page, 'Enter')
  await page.getByRole('menu').waitFor()
  await chooseListed(page, /^Pin to the front$/)
  await expect.poll(names).toEqual(['C', 'A', 'B'])
  await tabTo(page, /^[ABC]: red/)
  await goAlong(page, /^A: red/)
  await press(page, 'Delete')
  await expect.poll(names).toEqual(['C', 'B'])
  await tabTo(page, /^Put it back$/)
  await press(page, 'Enter')
  await expect.poll(names).toEqual(['C', 'A', 'B'])

  // Numbers, a mark moved on the plane, its zoom, and both switches.
  await tabTo(page, /^Red to green, typed$/)
  await page.keyboard.type('-2.5')
  await press(page, 'Enter')
  await undoes('Red to green')
  expect(await page.getByRole('textbox', { name: 'Red to green, typed' }).inputValue()).toBe('−2.50')
  await tabTo(page, /^Hold brightness/)
  await press(page, ' ')
  await tabTo(page, /^Keep clipped highlights grey/)
  await press(page, ' ')
  await tabTo(page, /^Neutral plane: /)
  const plane = page.locator('.plane-painting')
  const painted = await plane.evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL())
  await press(page, '+', 'ArrowLeft')
  await expect.poll(() => plane.evaluate((canvas: HTMLCanvasElement) => canvas.toDataURL())).not.toBe(painted)
  await press(page, 'Home')
  await tabTo(page, /^B$/)
  const onPlane = page.getByRole('slider', { name: 'B', exact: true })
  const before = await onPlane.getAttribute('aria-valuetext')
  await press(page, 'ArrowUp', 'ArrowUp')
  expect(await onPlane.getAttribute('aria-valuetext')).not.toBe(before)

  // What to fill the frame with before shooting.
  await tabTo(page, /^Neutral in camera$/)
  await press(page, 'Enter')
  await page.getByRole('dialog', { name: 'Neutral in camera' }).waitFor()
  await press(page, 'Escape')

  // A second light whose shade is found and shown.
  await tabTo(page, /^Add a second light$/)
  await press(page, 'Enter')
  await tabTo(page, /^In the sun: pick$/)
  await press(page, 'Enter', 'Shift+ArrowLeft', 'Enter')
  await page.getByText('nothing picked yet').nth(1).waitFor({ state: 'detached' })
  await tabTo(page, /^In the shade: pick$/)
  await press(page, 'Enter', 'Shift+ArrowRight', 'Shift+ArrowRight', 'Enter')
  await page.getByText('nothing picked yet').waitFor({ state: 'detached' })
  const lit = await restingPicture(page)
  await tabTo(page, /^Show the shade in the picture/)
  await press(page, ' ')
  await pictureOtherThan(page, lit)
  await press(page, ' ')

  const { edit, path } = await savedEdit(page, folder)
  expect(edit.marks.map(({ name }) => name)).toEqual(['C', 'A', 'B'])
  const valuesOf = (name: string) => edit.chain.find(({ operation }) => operation === name)!.values
  expect(valuesOf('neutral')).toMatchObject({ holdBrightness: false, highlightGuard: false })
  expect(valuesOf('secondLight')).toMatchObject({ way: 'found' })

  // Afresh, and back from the file.
  await tabTo(page, /^Export$/)
  const edited = await restingPicture(page)
  await tabTo(page, /^edit kept$/)
  await press(page, 'Enter')
  await tabTo(page, /^Back to the opening chain$/)
  await press(page, 'Enter')
  await pictureOtherThan(page, edited)
  await tabTo(page, /^edit kept$/)
  await press(page, 'Enter')
  await openOnEnter(page, /^Load an edit file…$/, path)
  await page.getByRole('button', { name: 'Second light', exact: true }).waitFor()
  await expect.poll(names).toEqual(['C', 'A', 'B'])
  await tabTo(page, /^Export$/)
  await pictureAgain(page, edited)
  expect(faults).toEqual([])
  await page.context().close()
})
