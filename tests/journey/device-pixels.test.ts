// The picture's canvas has just the device pixels that its element spans, at ratios that are no whole number too: one off, and the
// browser resamples all of it. What is right is asked of the browser (W3C Resize Observer, device-pixel-content-box). Emulated
// ratios do not reach that box, so each ratio has a browser of its own.
import { chromium, type Page } from 'playwright-core'
import { expect, inject, it } from 'vitest'

import { chromiumArguments, findChromium } from '../../src/commands/find-chromium.mjs'
import { writeSlope } from '../support/slope-raw.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'

const folder = temporaryFolder()

/** Device pixels that the canvas has more than its element spans, across and down. */
function pixelsTooMany(page: Page): Promise<[number, number]> {
  return page.locator('canvas.picture-canvas').evaluate(
    (canvas: HTMLCanvasElement) =>
      new Promise((resolve) => {
        const observer = new ResizeObserver(([{ devicePixelContentBoxSize }]) => {
          observer.disconnect()
          const [{ inlineSize, blockSize }] = devicePixelContentBoxSize
          resolve([canvas.width - inlineSize, canvas.height - blockSize])
        })
        observer.observe(canvas, { box: 'device-pixel-content-box' })
      }),
  )
}

it.each([1.1, 1.25])('at %s device pixels to a CSS pixel', async (ratio) => {
  const args = [...chromiumArguments, `--force-device-scale-factor=${ratio}`, '--window-size=1237,811']
  const browser = await chromium.launch({ executablePath: findChromium(), args })
  try {
    const page = await (await browser.newContext({ viewport: null })).newPage()
    await page.goto(inject('journeyAddress'))
    expect(await page.evaluate(() => devicePixelRatio)).toBeCloseTo(ratio, 6)
    await page.locator('.start-ways input[type=file]:not([webkitdirectory])').setInputFiles(writeSlope(folder))
    await page.getByRole('heading', { name: 'Neutral' }).waitFor()
    for (const width of Array.from({ length: 9 }, (_, i) => `${900 + i}px`)) {
      await page.locator('body').evaluate((body, wanted) => (body.style.width = wanted), width)
      await expect.poll(() => pixelsTooMany(page), { timeout: 20_000 }).toEqual([0, 0])
    }
  } finally {
    await browser.close()
  }
})
