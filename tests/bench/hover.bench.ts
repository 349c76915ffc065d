// A hover drawing in a real browser, held to a plain copy of the same view: what the finished picture costs beyond pixels.
import { chromium } from 'playwright-core'
import { createServer } from 'vite'
import { fileURLToPath } from 'node:url'

import { benchRow, type BenchRows } from '../../src/commands/bench-row.ts'
import { findChromium } from '../../src/commands/find-chromium.mjs'
import type { HoverCost } from './hover-cost.ts'

export const rows: BenchRows = async function* () {
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
    const module = `/@fs${fileURLToPath(new URL('./hover-cost.ts', import.meta.url))}`
    const cost = await page.evaluate(async (path) => (await import(path)).measureHover() as HoverCost, module)
    const view = `1600×1000 on ${cost.renderer.slice(0, 24)}`
    yield benchRow(`hover drawing, opening chain, ${view} ÷ plain copy`, cost.opening, 'ms', cost.copy)
    yield benchRow('the same with a hue turn ÷ plain copy', cost.withHueTurn, 'ms', cost.copy)
    yield benchRow('opening chain at half size, as slow graphics hover ÷ plain copy', cost.moving, 'ms', cost.copy)
  } finally {
    await browser.close()
    await server.close()
  }
}
