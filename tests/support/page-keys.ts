// A page of a journey used by keys alone: going to what bears a name, choosing from what a key unfolded.
import { readFileSync } from 'node:fs'
import { join } from 'node:path'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

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
    const label = activeElement instanceof HTMLInputElement ? activeElement.labels?.[0]?.textContent : null
    return activeElement?.getAttribute('aria-label') ?? label ?? activeElement?.textContent ?? ''
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

/** Goes along a list with an arrow key until the focus is on what has this name. */
export async function goAlong(page: Page, name: RegExp, key = 'ArrowDown'): Promise<void> {
  for (let presses = 0; presses < mostPresses && !name.test(await focusedName(page)); presses++)
    await page.keyboard.press(key)
  expect(await focusedName(page)).toMatch(name)
}

/** Goes along a list that is open to what has this name, and presses Enter. */
export async function chooseListed(page: Page, name: RegExp, key = 'ArrowDown'): Promise<void> {
  await expect.poll(() => focusedName(page), { timeout: 10_000 }).not.toBe('')
  await goAlong(page, name, key)
  await page.keyboard.press('Enter')
}

/** Adds a step to the chain from its menu. */
export async function addStep(page: Page, title: RegExp): Promise<void> {
  await tabTo(page, /^Add a step$/)
  await press(page, 'Enter')
  await page.getByRole('menu').waitFor()
  await chooseListed(page, title)
}

/** Presses Enter on what has the focus, puts the file that leaves the page into a folder and gives its path. */
export async function fileOnEnter(page: Page, folder: string): Promise<string> {
  const downloading = page.waitForEvent('download')
  await press(page, 'Enter')
  const download = await downloading
  const path = join(folder, download.suggestedFilename())
  await download.saveAs(path)
  return path
}

/** Opens a file of the machine from a button of this name. */
export async function openOnEnter(page: Page, name: RegExp, path: string): Promise<void> {
  await tabTo(page, name)
  const choosing = page.waitForEvent('filechooser')
  await press(page, 'Enter')
  await (await choosing).setFiles(path)
}

interface SavedEdit {
  readonly chain: {
    readonly operation: string
    readonly values: Record<string, unknown>
    readonly mask?: { parts: { kind: string; values: Record<string, unknown> }[] }
  }[]
  readonly marks: { readonly name: string }[]
}

/** The frame's edit as the page saves it, and the path of its file in a folder. */
export async function savedEdit(page: Page, folder: string): Promise<{ edit: SavedEdit; path: string }> {
  await tabTo(page, /^edit kept$/)
  await press(page, 'Enter')
  await page.getByRole('dialog').waitFor()
  await tabTo(page, /^Save as an edit file…$/)
  const path = await fileOnEnter(page, folder)
  return { edit: JSON.parse(readFileSync(path, 'utf8')), path }
}
