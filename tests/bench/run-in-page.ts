// Opens an empty page in a real browser and runs a module of this folder in it.
import { chromium } from 'playwright-core'
import { createServer } from 'vite'
import { fileURLToPath } from 'node:url'

import { findChromium } from '../../src/commands/find-chromium.mjs'

/** What the function `name` of the module `file` (beside this one) returns when the page calls it. */
export async function runInPage<Result>(file: string, name: string): Promise<Result> {
  const server = await createServer({ logLevel: 'error', server: { port: 0 } })
  await server.listen()
  const browser = await chromium.launch({
    executablePath: findChromium(),
    args: ['--no-sandbox', '--enable-unsafe-swiftshader'],
  })
  try {
    const page = await browser.newPage()
    const address = `${server.resolvedUrls!.local[0]}empty`
    await page.route(address, (route) => route.fulfill({ contentType: 'text/html', body: '<!doctype html>' }))
    await page.goto(address)
    const module = `/@fs${fileURLToPath(new URL(file, import.meta.url))}`
    return await page.evaluate(async ([path, called]) => (await import(path))[called]() as Result, [module, name])
  } finally {
    await browser.close()
    await server.close()
  }
}
