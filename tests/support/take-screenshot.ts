// Takes the picture of the bench that the README shows, from the real page with the demo roll, so that it stays true:
// `npm run screenshot`. Writes public/bench.png.
import { startWorkbenchSite } from './workbench-page.ts'

/** Position of the shown frame in the roll, and where the probe stands on the picture area. */
const frame = 2
const probe = { x: 0.36, y: 0.62 }

const site = await startWorkbenchSite()
const { page } = await site.open({ width: 1440, height: 810 })
await page.getByRole('button', { name: 'Open the demo roll' }).click()
await page.getByRole('heading', { name: 'Neutral' }).waitFor({ timeout: 600_000 })
await page.getByRole('progressbar').first().waitFor({ state: 'detached', timeout: 900_000 })
for (let at = 1; at < frame; at++) await page.keyboard.press('PageDown')
await page.getByRole('heading', { name: 'Neutral' }).waitFor({ timeout: 600_000 })
await page.getByRole('button', { name: 'Probe', exact: true }).click()
const box = await page.locator('#picture-area').boundingBox()
if (!box) throw new Error('The bench shows no picture.')
await page.mouse.move(box.x + box.width * probe.x, box.y + box.height * probe.y)
// The picture is coarse while the probe moves and exact when it rests.
await page.waitForTimeout(4000)
await page.screenshot({ path: new URL('../../public/bench.png', import.meta.url).pathname })
await site.close()
