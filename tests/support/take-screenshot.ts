// Takes the picture of the bench that the README shows, from the real page with the demo roll, so that it stays true:
// `npm run screenshot [-- --files DIR] [--out FILE]`. With `--files` the roll's frames, made before by `npm run demo:files`, are
// opened from a folder instead of being made in the page, which takes minutes. Writes public/bench.png.
import { readdir } from 'node:fs/promises'
import { join } from 'node:path'
import { parseArgs } from 'node:util'
import type { Page } from 'playwright-core'
import { startWorkbenchSite } from './workbench-page.ts'

/**
 * What the picture shows: the roll's frame of this number, places kept as marks (planks, a cloud), and where the probe stands
 * at last (rock); places in 0…1 of the picture's area.
 */
const scenario = {
  frame: 2,
  marks: [
    { x: 0.8, y: 0.82 },
    { x: 0.49, y: 0.115 },
  ],
  probe: { x: 0.463, y: 0.27 },
}
const size = { width: 1440, height: 810 }
/** Longest time for making or opening the roll where the processor does everything, and for one drawing, in ms. */
const patienceMs = 1_200_000
const drawingMs = 120_000

const { values } = parseArgs({
  options: { files: { type: 'string' }, out: { type: 'string', default: 'public/bench.png' } },
})

async function openRoll(page: Page): Promise<void> {
  if (values.files) {
    const names = (await readdir(values.files)).filter((name) => name.endsWith('.dng')).sort()
    const paths = names.map((name) => join(values.files!, name))
    await page.locator('input[type=file]').first().setInputFiles(paths)
  } else {
    await page.getByRole('button', { name: 'Open the demo roll' }).click()
  }
  await page.getByRole('heading', { name: 'Neutral', exact: true }).waitFor({ timeout: patienceMs })
  await page.getByRole('progressbar').first().waitFor({ state: 'detached', timeout: patienceMs })
}

/** Waits until two looks at the page, a while apart, are the same: the picture is coarse while things move and exact at rest. */
async function settle(page: Page): Promise<void> {
  const until = Date.now() + drawingMs
  let before = await page.screenshot()
  while (Date.now() < until) {
    await page.waitForTimeout(1500)
    const now = await page.screenshot()
    if (now.equals(before)) return
    before = now
  }
  throw new Error(`The page did not come to rest within ${drawingMs / 1000} s.`)
}

async function placeOnPicture(page: Page, { x, y }: { x: number; y: number }): Promise<[number, number]> {
  const box = await page.locator('#picture-area').boundingBox()
  if (!box) throw new Error('The bench shows no picture.')
  return [box.x + box.width * x, box.y + box.height * y]
}

const site = await startWorkbenchSite()
try {
  const { page, faults } = await site.open(size)
  await openRoll(page)
  for (let at = 1; at < scenario.frame; at++) await page.keyboard.press('PageDown')
  await settle(page)
  await page.getByRole('button', { name: 'Probe', exact: true }).click()
  await page.keyboard.down('Shift')
  for (const mark of scenario.marks) {
    await page.mouse.click(...(await placeOnPicture(page, mark)))
    await settle(page)
  }
  await page.keyboard.up('Shift')
  await page.mouse.move(...(await placeOnPicture(page, scenario.probe)))
  await settle(page)
  if (faults.length) throw new Error(`The page complained: ${faults.join('; ')}`)
  await page.screenshot({ path: values.out })
} finally {
  await site.close()
}
