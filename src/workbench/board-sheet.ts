// The board as one picture, to teach with or to decide tomorrow: every mark finished, with its name and gains, on neutral grey.
import { gainsText } from '../edits/gains-text.ts'
import type { Marks } from '../edits/marks.ts'
import { layoutSheet, margin } from './sheet-layout.ts'

/** Width of a picture on the sheet in pixels: enough to judge colours, and twelve still fit a large screen (our choice). */
export const sheetPictureWidth = 640

/** Encoded greys of ground and words, the interface's own; letters in pixels. */
const ground = '#4a4a4a'
const ink = '#f4f4f4'
const softInk = '#d6d6d6'
const family = 'system-ui, sans-serif'

export interface SheetContent {
  readonly title: string
  readonly marks: Marks
  /** The finished picture of each mark, all of one size. */
  readonly pictures: readonly ImageData[]
}

/** The sheet as a PNG. */
export async function drawBoardSheet({ title, marks, pictures }: SheetContent): Promise<Blob> {
  const [{ width: pictureWidth, height: pictureHeight }] = pictures
  const { width, height, places } = layoutSheet(marks.length, pictures[0])
  const canvas = new OffscreenCanvas(width, height)
  const context = canvas.getContext('2d')!
  context.fillStyle = ground
  context.fillRect(0, 0, width, height)

  const write = (text: string, x: number, y: number, font: string, colour: string, room: number) => {
    context.font = font
    context.fillStyle = colour
    context.fillText(text, x, y, room)
  }
  write(title, margin, margin + 28, `600 28px ${family}`, ink, width - 2 * margin)
  for (const [i, { x, y }] of places.entries()) {
    const { name, gains } = marks[i]
    const words = `${gainsText(gains)} stop`
    context.putImageData(pictures[i], x, y)
    write(name, x, y + pictureHeight + 30, `600 20px ${family}`, ink, pictureWidth)
    write(words, x, y + pictureHeight + 56, `18px ${family}`, softInk, pictureWidth)
    // Thousands of pixels are put at once: others get their turn in between.
    await new Promise((resolve) => setTimeout(resolve))
  }
  return canvas.convertToBlob({ type: 'image/png' })
}
