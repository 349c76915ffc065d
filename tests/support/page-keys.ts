// A page of a journey used by keys alone: going to what bears a name, choosing from what a key unfolded.
import { expect } from 'vitest'
import type { Page } from 'playwright-core'

/** Tab presses until a name counts as out of reach; the whole bench has fewer stops (our choice). */
const mostPresses = 160

/** Presses keys one after the other. */
export async function press(page: Page, ...keys: string[]): Promise<void> {
  for (const key of keys) await page.keyboard.press(key)
}

/** What the focus is on, by the name that is spoken. */
export function focusedName(page: Page): Promise<string> {
  return page.evaluate(() => {
    const { activeElement } = document
    return activeElement?.getAttribute('aria-label') ?? activeElement?.textContent ?? ''
  })
}

/** Goes on, or back, with Tab until the focus is on what has this name. @throws where no press comes to it */
export async function tabTo(page: Page, name: RegExp, key: 'Tab' | 'Shift+Tab' = 'Tab'): Promise<void> {
  for (let presses = 0; presses < mostPresses; presses++) {
    if (name.test(await focusedName(page))) return
    await page.keyboard.press(key)
  }
  throw new Error(`Tab does not come to ${name}.`)
}

/** Goes along a list that is open with an arrow key until the focus is on what has this name, and presses Enter. */
export async function chooseListed(page: Page, name: RegExp, key = 'ArrowDown'): Promise<void> {
  await expect.poll(() => focusedName(page), { timeout: 10_000 }).not.toBe('')
  for (let presses = 0; presses < mostPresses && !name.test(await focusedName(page)); presses++)
    await page.keyboard.press(key)
  expect(await focusedName(page)).toMatch(name)
  await page.keyboard.press('Enter')
}

/** Adds a step to the chain from its menu. */
export async function addStep(page: Page, title: RegExp): Promise<void> {
  await tabTo(page, /^Add a step$/)
  await press(page, 'Enter')
  await page.getByRole('menu').waitFor()
  await chooseListed(page, title)
}
