// The whole way by keys alone in the real page, from opening a raw file to the exported picture; the board has a journey of its
// own. What comes out is read from the files that the page wrote, and from the canvas.
import { readFileSync } from 'node:fs'
import { expect, it } from 'vitest'

import {
  addStep,
  chooseListed,
  fileOnEnter,
  focusedName,
  openOnEnter,
  press,
  savedEdit,
  tabTo,
} from '../support/page-keys.ts'
import { redToBlue } from '../support/picture-colour.ts'
import { pictureOtherThan, restingPicture } from '../support/picture-on-page.ts'
import { writeSlope } from '../support/slope-raw.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const folder = temporaryFolder()
const frame = writeSlope(folder)

const site = journeySite()

async function openByKeys() {
  const opened = await site.open()
  const { page } = opened
  await openOnEnter(page, /^Open photographs…$/, frame)
  await page.getByRole('heading', { name: 'Neutral', exact: true }).waitFor()
  return { ...opened, first: await restingPicture(page) }
}

it('states the filter, moves the neutral, warms what is seen and exports, by keys alone', async () => {
  const { page, faults, first } = await openByKeys()
  await tabTo(page, /^filter not stated$/)
  await press(page, 'Enter')
  await page.getByRole('listbox').waitFor()
  await chooseListed(page, /^720 nm$/, 'ArrowRight')
  await page.getByRole('button', { name: 'filter 720 nm' }).waitFor()

  // A frame behind 720 nm opens with red and blue exchanged, so that more red in the neutral is no longer warmer.
  await page.getByRole('button', { name: 'Channel mix', exact: true }).waitFor()
  const exchanged = await pictureOtherThan(page, first)

  await tabTo(page, /^Neutral$/)
  await press(page, 'Enter')
  const point = page.getByRole('slider', { name: 'Neutral', exact: true })
  await point.waitFor()
  while (!(await point.evaluate((dot) => dot === document.activeElement))) await press(page, 'Tab')
  const stoodAt = await point.getAttribute('aria-valuetext')
  await press(page, 'ArrowRight', 'ArrowRight', 'ArrowUp')
  const moved = await pictureOtherThan(page, exchanged)
  expect(await point.getAttribute('aria-valuetext')).not.toBe(stoodAt)

  const before = await redToBlue(page)
  await tabTo(page, /^Warmth as seen$/, 'Shift+Tab')
  await press(page, 'PageUp', 'PageUp', 'PageUp', 'PageUp')
  await pictureOtherThan(page, moved)
  expect(await redToBlue(page)).toBeGreaterThan(before * 1.02)

  await tabTo(page, /^Export$/, 'Shift+Tab')
  await press(page, 'Enter')
  await page.getByRole('dialog').waitFor()
  await tabTo(page, /^Export$/)
  // Little-endian TIFF: 'II' and 42 (TIFF 6.0, section 2).
  expect([...readFileSync(await fileOnEnter(page, folder)).subarray(0, 4)]).toEqual([0x49, 0x49, 42, 0])
  expect(faults).toEqual([])
  await page.context().close()
})

it('sets a second light, a place, a curve and a map by keys alone, and finds them in the edit file', async () => {
  const { page, faults } = await openByKeys()
  await tabTo(page, /^Add a second light$/)
  await press(page, 'Enter')
  await page.getByRole('heading', { name: 'Second light' }).waitFor()
  await tabTo(page, /^In the sun: pick$/)
  await press(page, 'Enter', 'Shift+ArrowRight', 'Enter')
  await page.getByText('nothing picked yet').nth(1).waitFor({ state: 'detached' })
  await tabTo(page, /^In the shade: pick$/)
  await press(page, 'Enter', 'Shift+ArrowLeft', 'Shift+ArrowUp', 'Enter')
  await page.getByText('nothing picked yet').waitFor({ state: 'detached' })

  await tabTo(page, /^Found/)
  await press(page, 'Enter')
  await page.getByRole('listbox').waitFor()
  await chooseListed(page, /^Graduated/)
  await tabTo(page, /^Sun ends here/, 'Shift+Tab')
  const ends = await focusedName(page)
  await press(page, 'Shift+ArrowRight')
  await expect.poll(() => focusedName(page)).not.toBe(ends)

  await tabTo(page, /^Paint shade$/)
  await press(page, 'Enter', 'ArrowLeft', 'Enter', 'Shift+ArrowUp', 'Enter', 'Escape')
  await page.getByText('2 strokes').waitFor()
  expect(await focusedName(page)).toBe('Paint shade')

  await tabTo(page, /^Exposure and contrast$/, 'Shift+Tab')
  await press(page, 'Enter')
  await tabTo(page, /^Act only in a place$/)
  await press(page, 'Enter')
  await page.getByRole('menu').waitFor()
  await chooseListed(page, /^Round area$/)
  await tabTo(page, /^Middle of the round area/, 'Shift+Tab')
  await press(page, 'Shift+ArrowLeft', 'ArrowUp')

  await addStep(page, /^Tone curve$/)
  await tabTo(page, /^Point 1 of 2$/)
  await press(page, 'Enter')
  await expect.poll(() => focusedName(page)).toBe('Point 2 of 3')
  await press(page, 'ArrowUp', 'ArrowUp')

  await tabTo(page, /^Board$/)
  await press(page, 'ArrowRight')
  await page.getByRole('tabpanel', { name: 'Map shelf' }).waitFor()
  await expect.poll(() => page.locator('.map-face').count()).toBeGreaterThan(2)
  const map = await page.locator('.map-face').nth(1).getAttribute('aria-label')
  while (
    !(await page
      .locator('.map-face')
      .first()
      .evaluate((face) => face === document.activeElement))
  )
    await press(page, 'Tab')
  await press(page, 'ArrowDown', 'Enter')
  await page.getByRole('button', { name: `${map}, on the frame now`, exact: true }).waitFor()

  const { chain } = (await savedEdit(page, folder)).edit
  const valuesOf = (name: string) => chain.find(({ operation }) => operation === name)!.values
  expect(valuesOf('secondLight')).toMatchObject({ way: 'graduated' })
  expect([valuesOf('secondLight').sun, valuesOf('secondLight').shade]).toEqual([expect.any(Array), expect.any(Array)])
  const [part] = chain.find(({ operation }) => operation === 'exposureContrast')!.mask!.parts
  const [x, y] = part.values.centre as number[]
  expect([part.kind, x < 0.5, y < 0.5]).toEqual(['radial', true, true])
  expect(valuesOf('toneCurve').points).toHaveLength(6)
  expect(faults).toEqual([])
  await page.context().close()
})
