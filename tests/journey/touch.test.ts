// The bench by fingers alone in the real page: probing by ring and by outline, keeping marks and a neutral, and moving a mark along
// the board.
import type { Page } from 'playwright-core'
import { expect, it } from 'vitest'

import { pictureOtherThan, restingPicture } from '../support/picture-on-page.ts'
import { writeSlope } from '../support/slope-raw.ts'
import { temporaryFolder } from '../support/temporary-folder.ts'
import { journeySite } from '../support/journey-site.ts'

const site = journeySite()
const frame = writeSlope(temporaryFolder())

type Point = readonly [x: number, y: number]

/** One finger down at the first place, resting there, moved in steps to each of the others and lifted. */
async function dragFinger(page: Page, [from, ...others]: readonly Point[], restMs = 0): Promise<void> {
  const fingers = await page.context().newCDPSession(page)
  const touch = (type: 'touchStart' | 'touchMove' | 'touchEnd', at?: Point) =>
    fingers.send('Input.dispatchTouchEvent', { type, touchPoints: at ? [{ x: at[0], y: at[1] }] : [] })
  await touch('touchStart', from)
  await page.waitForTimeout(restMs)
  const steps = 8
  let [x, y] = from
  for (const to of others) {
    const [stepX, stepY] = [(to[0] - x) / steps, (to[1] - y) / steps]
    for (let i = 0; i < steps; i++) await touch('touchMove', [(x += stepX), (y += stepY)])
  }
  await touch('touchEnd')
}

it('probes, outlines, keeps and puts marks in order by fingers alone', async () => {
  const { page, faults } = await site.open({ hasTouch: true })
  await page.locator('.start-ways input[type=file]:not([webkitdirectory])').setInputFiles(frame)
  await page.getByRole('heading', { name: 'Neutral', exact: true }).waitFor()
  const opened = await restingPicture(page)
  const box = (await page.locator('#picture-area').boundingBox())!
  const at = (x: number, y: number): Point => [box.x + box.width * x, box.y + box.height * y]

  await page.getByRole('button', { name: 'Probe', exact: true }).tap()
  await page.touchscreen.tap(...at(0.3, 0.4))
  const roamed = await pictureOtherThan(page, opened)
  await page.getByRole('button', { name: 'Keep as a mark', exact: true }).tap()
  await dragFinger(page, [at(0.3, 0.4), at(0.6, 0.6)])
  await pictureOtherThan(page, roamed)
  await page.getByRole('button', { name: 'Keep as a mark', exact: true }).tap()
  await page.getByRole('button', { name: 'Make it neutral' }).tap()
  await page.getByRole('button', { name: /^Undo: / }).waitFor()

  const faces = page.locator('.mark .mark-face')
  const names = () => page.locator('.mark .mark-name').allTextContents()
  expect(await names()).toEqual(['A', 'B'])
  const [first, second] = await Promise.all([faces.nth(0).boundingBox(), faces.nth(1).boundingBox()])
  const middle = (face: { x: number; y: number; width: number; height: number } | null): Point => {
    return [face!.x + face!.width / 2, face!.y + face!.height / 2]
  }
  await dragFinger(page, [middle(first), middle(second)], 700)
  await expect.poll(names).toEqual(['B', 'A'])

  const before = await restingPicture(page)
  await page.getByRole('button', { name: 'Probe', exact: true }).tap()
  await page.getByRole('button', { name: 'Outline' }).tap()
  await dragFinger(page, [at(0.2, 0.2), at(0.4, 0.2), at(0.3, 0.4), at(0.2, 0.2)])
  await pictureOtherThan(page, before)
  await page.getByRole('button', { name: 'Keep as a mark', exact: true }).tap()
  await expect.poll(names).toEqual(['B', 'A', 'C'])
  expect(faults).toEqual([])
})
