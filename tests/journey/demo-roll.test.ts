// The main job as a person does it, in a real browser: demo roll, probe, neutral, exchange, export; the file is judged by exiftool.
import { execFileSync } from 'node:child_process'
import { statSync } from 'node:fs'
import type { Page } from 'playwright-core'
import { afterAll, beforeAll, describe, expect, it } from 'vitest'

import { hasTool } from '../support/outside-tools.ts'
import { startWorkbenchSite, type WorkbenchSite } from '../support/workbench-page.ts'

let site: WorkbenchSite
beforeAll(async () => {
  site = await startWorkbenchSite()
})
afterAll(() => site?.close())

/** The picture area as PNG bytes, once nothing on it changes any more. */
async function settledPicture(page: Page): Promise<Buffer> {
  const area = page.locator('canvas.picture-canvas')
  let before = await area.screenshot()
  for (let tries = 0; tries < 40; tries++) {
    await page.waitForTimeout(400)
    const now = await area.screenshot()
    if (now.equals(before)) return now
    before = now
  }
  throw new Error('The picture never came to rest.')
}

async function pointAt(page: Page, x: number, y: number): Promise<void> {
  const box = (await page.locator('#picture-area').boundingBox())!
  await page.mouse.move(box.x + box.width * x, box.y + box.height * y)
}

describe('the main job on the demo roll', () => {
  it('goes from the demo roll to a valid 16-bit TIFF', async () => {
    const { page, faults } = await site.open()
    await page.getByRole('button', { name: 'Open the demo roll' }).click()
    await page.getByRole('heading', { name: 'Neutral' }).waitFor({ timeout: 200_000 })
    const opened = await settledPicture(page)

    await page.getByRole('button', { name: 'Probe', exact: false }).click()
    await pointAt(page, 0.5, 0.85)
    const roamed = await settledPicture(page)
    expect(roamed.equals(opened)).toBe(false)

    await page.keyboard.press('Escape')
    await pointAt(page, 0.01, 0.01)
    expect((await settledPicture(page)).equals(opened)).toBe(true)

    await page.getByRole('button', { name: 'Probe', exact: false }).click()
    await pointAt(page, 0.5, 0.85)
    await page.mouse.down()
    await page.mouse.up()
    await page.getByRole('button', { name: 'Probe', exact: false }).click()
    await pointAt(page, 0.01, 0.01)
    const committed = await settledPicture(page)
    expect(committed.equals(opened)).toBe(false)

    await page.getByText('Channel mix').first().click()
    await page.getByRole('button', { name: 'Exchange red and blue' }).click()
    expect((await settledPicture(page)).equals(committed)).toBe(false)
    await page.keyboard.press('Control+z')
    expect((await settledPicture(page)).equals(committed)).toBe(true)

    await page.getByRole('button', { name: 'Export' }).click()
    const download = page.waitForEvent('download', { timeout: 240_000 })
    await page.getByRole('dialog').getByRole('button', { name: 'Export' }).click()
    const file = await (await download).path()
    expect(statSync(file).size).toBeGreaterThan(1e6)
    if (hasTool('exiftool')) {
      const [facts] = JSON.parse(execFileSync('exiftool', ['-json', '-n', '-validate', '-warning', '-error', '-BitsPerSample', '-Software', '-ProfileDescription', file], { encoding: 'utf8' }))
      expect(facts.Validate).toMatch(/^0 0 0/)
      expect(facts.BitsPerSample).toBe('16 16 16')
      expect(facts.Software).toMatch(/^Rimeleaf /)
    }
    expect(faults).toEqual([])
    await page.context().close()
  })
})
