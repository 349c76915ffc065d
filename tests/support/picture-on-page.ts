// The picture on the page of a journey, as a person sees it: what it shows, whether it came to rest, pointing at it.
import { createHash } from 'node:crypto'
import type { Page } from 'playwright-core'
import { expect } from 'vitest'

/** Software graphics on two busy cores take seconds over a picture; common practice, no source. */
const patience = { timeout: 60_000, interval: 300 }

/** Pictures in a row that must be one and the same until the picture counts as at rest; common practice, no source. */
const restCount = 4

/** The line around the picture tells where the keys are, nothing of the picture. */
const withoutFocus = '.picture-area::after { display: none !important }'

/** A digest of what stands on the picture's canvas; equal where every pixel is. */
async function pictureDigest(page: Page): Promise<string> {
  const shot = await page.locator('canvas.picture-canvas').screenshot({ style: withoutFocus })
  return createHash('sha256').update(shot).digest('hex')
}

/** The picture's digest once it has come to rest. */
export async function restingPicture(page: Page): Promise<string> {
  const seen: string[] = []
  await expect
    .poll(async () => {
      seen.push(await pictureDigest(page))
      const last = seen.slice(-restCount)
      return last.length === restCount && new Set(last).size === 1
    }, patience)
    .toBe(true)
  return seen.at(-1)!
}

/** Waits until the picture is another than `digest`, and then until it rests. */
export async function pictureOtherThan(page: Page, digest: string): Promise<string> {
  await expect.poll(() => pictureDigest(page), patience).not.toBe(digest)
  return restingPicture(page)
}

/** Waits until every pixel is as it was. */
export async function pictureAgain(page: Page, digest: string): Promise<void> {
  await expect.poll(() => pictureDigest(page), patience).toBe(digest)
}

/** Moves the pointer to a place of the picture's area, x and y in 0…1 from its upper left. */
export async function pointAt(page: Page, x: number, y: number): Promise<void> {
  const box = await page.locator('#picture-area').boundingBox()
  if (!box) throw new Error('The page shows no picture area.')
  await page.mouse.move(box.x + box.width * x, box.y + box.height * y)
}
