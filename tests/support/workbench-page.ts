// The built workbench in a real browser, for journeys, benches and screenshots.
import { type Browser, chromium, type Page } from 'playwright-core'

import { chromiumArguments, findChromium } from '../../src/commands/find-chromium.mjs'
import { buildAndServePage } from '../../src/commands/page-server.ts'

export interface WorkbenchSite {
  /** A new page in a fresh profile; its errors and console errors are collected in `faults`. */
  open(options?: { width?: number; height?: number; hasTouch?: boolean }): Promise<{ page: Page; faults: string[] }>
  close(): Promise<void>
}

/** Builds, serves and launches. */
export async function startWorkbenchSite(): Promise<WorkbenchSite> {
  const server = await buildAndServePage()
  const site = await visitWorkbenchSite(server.address)
  return {
    open: site.open,
    async close() {
      await site.close()
      await server.close()
    },
  }
}

/**
 * Launches a browser for the site at `address`. File pickers are taken away, so that exports become downloads that a test can
 * read, and choosers of files wait for the test from the start: what a key opens at once would else be gone before it listens.
 */
export async function visitWorkbenchSite(address: string): Promise<WorkbenchSite> {
  const browser: Browser = await chromium.launch({
    executablePath: findChromium(),
    args: chromiumArguments,
  })
  return {
    async open({ width = 1280, height = 720, hasTouch = false } = {}) {
      const context = await browser.newContext({ viewport: { width, height }, hasTouch, acceptDownloads: true })
      await context.addInitScript(() => {
        for (const name of ['showOpenFilePicker', 'showSaveFilePicker', 'showDirectoryPicker'])
          delete (window as unknown as Record<string, unknown>)[name]
      })
      const page = await context.newPage()
      const faults: string[] = []
      page.on('pageerror', (error) => faults.push(error.message))
      page.on('console', (message) => {
        if (message.type() === 'error') faults.push(message.text())
      })
      page.on('filechooser', () => {})
      await page.goto(address)
      return { page, faults }
    },
    close: () => browser.close(),
  }
}
