// Whoever uses keys sees where they are: at every stop of the Tab key on the bench some pixels at its place tell it from the same
// place without the focus (WCAG 2.2, 2.4.7 Focus Visible).
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'

import { focusedName, press } from '../support/page-keys.ts'
import { restingPicture } from '../support/picture-on-page.ts'
import { writeSlope } from '../support/slope-raw.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const site = journeySite()
const frame = writeSlope(temporaryFolder())

/** CSS pixels around a control that may show its focus. */
const roundPx = 6

/** The focused control's place as it looks now, cut to the window. */
async function shotOfFocused(page: Page): Promise<string> {
  const { width, height } = page.viewportSize()!
  const box = await page.evaluate(() => {
    const { x, y, right, bottom } = document.querySelector('[data-tried]')!.getBoundingClientRect()
    return { x, y, right, bottom }
  })
  const [x, y] = [Math.max(box.x - roundPx, 0), Math.max(box.y - roundPx, 0)]
  const clip = {
    x,
    y,
    width: Math.min(box.right + roundPx, width) - x,
    height: Math.min(box.bottom + roundPx, height) - y,
  }
  return (await page.screenshot({ clip, animations: 'disabled' })).toString('base64')
}

/** Whether taking the focus off and putting it back changes what is seen. The focus stays where it was. */
async function showsFocus(page: Page): Promise<boolean> {
  await page.evaluate(() => document.activeElement!.setAttribute('data-tried', ''))
  const withFocus = await shotOfFocused(page)
  await page.evaluate(() => (document.activeElement as HTMLElement).blur())
  const without = await shotOfFocused(page)
  await page.evaluate(() => {
    const tried = document.querySelector<HTMLElement>('[data-tried]')!
    tried.removeAttribute('data-tried')
    tried.focus()
  })
  return withFocus !== without
}

it('every stop of the Tab key on the bench shows that it has the focus', async () => {
  const { page } = await site.open()
  await page.locator('.start-ways input[type=file]:not([webkitdirectory])').setInputFiles(frame)
  await page.getByRole('heading', { name: 'Suggested' }).waitFor()
  await page.addStyleTag({ content: '.tooltip { display: none !important }' })
  await restingPicture(page)
  await press(page, 'n', 'm', 'Shift+ArrowRight', 'm', 'Escape', 'Tab')
  const stops: string[] = []
  const unseen: string[] = []
  for (;;) {
    const at = await page.evaluate(() => {
      const { activeElement, body } = document
      return activeElement === body ? null : [...document.querySelectorAll('*')].indexOf(activeElement!)
    })
    const stop = at === null ? null : `${await focusedName(page)} (${at})`
    if (stop !== null && stops.includes(stop)) break
    if (stop !== null) {
      stops.push(stop)
      if (!(await showsFocus(page))) unseen.push(stop)
    }
    await page.keyboard.press('Tab')
  }
  expect(stops.length).toBeGreaterThan(30)
  expect(unseen).toEqual([])
})
