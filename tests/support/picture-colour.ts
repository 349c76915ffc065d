// How red the picture on the page is against blue, in the mean of what a person sees.
import type { Page } from 'playwright-core'

/** Mean of red over mean of blue of the sRGB codes on the canvas; larger is warmer. */
export async function redToBlue(page: Page): Promise<number> {
  const shot = await page.locator('canvas.picture-canvas').screenshot()
  return page.evaluate(async (base64) => {
    const bytes = Uint8Array.from(atob(base64), (char) => char.charCodeAt(0))
    const picture = await createImageBitmap(new Blob([bytes], { type: 'image/png' }))
    const pen = new OffscreenCanvas(picture.width, picture.height).getContext('2d')!
    pen.drawImage(picture, 0, 0)
    const { data } = pen.getImageData(0, 0, picture.width, picture.height)
    let [red, blue] = [0, 0]
    for (let i = 0; i < data.length; i += 4) {
      red += data[i]
      blue += data[i + 2]
    }
    return red / blue
  }, shot.toString('base64'))
}
