// The board as one sheet: what is drawn is read back as pixels. Pictures stand as they are, and a name changes the words below its
// own picture and nothing else.
import { expect, it } from 'vitest'

import type { Marks } from '../../src/edits/marks.ts'
import { drawBoardSheet } from '../../src/workbench/board-sheet.ts'
import { layoutSheet } from '../../src/workbench/sheet-layout.ts'

const size = { width: 64, height: 40 }
const pictures = [40, 200].map((level) => {
  const picture = new ImageData(size.width, size.height)
  picture.data.forEach((_, i) => (picture.data[i] = i % 4 === 3 ? 255 : level + (i % 3)))
  return picture
})

function marksNamed(...names: string[]): Marks {
  return names.map((name, i) => ({
    id: `mark-${i}`,
    name,
    gains: { redStops: -i, blueStops: i },
    place: null,
    pinned: false,
  }))
}

async function sheetPixels(...names: string[]): Promise<ImageData> {
  const sheet = await drawBoardSheet({ title: 'dune, 590 nm', marks: marksNamed(...names), pictures })
  const bitmap = await createImageBitmap(sheet)
  const context = new OffscreenCanvas(bitmap.width, bitmap.height).getContext('2d')!
  context.drawImage(bitmap, 0, 0)
  return context.getImageData(0, 0, bitmap.width, bitmap.height)
}

const { places } = layoutSheet(pictures.length, size)

it('every picture stands in its place, pixel by pixel', async () => {
  const { width, data } = await sheetPixels('Stone', 'Leaf')
  for (const [i, { x, y }] of places.entries()) {
    for (let row = 0; row < size.height; row++) {
      const from = ((y + row) * width + x) * 4
      const own = row * size.width * 4
      expect(data.slice(from, from + size.width * 4)).toEqual(pictures[i].data.slice(own, own + size.width * 4))
    }
  }
})

it('another name changes the words below its picture and nothing else; the same names give the same sheet', async () => {
  const [first, again, renamed] = [
    await sheetPixels('Stone', 'Leaf'),
    await sheetPixels('Stone', 'Leaf'),
    await sheetPixels('Stone', 'Moss'),
  ]
  expect(again.data).toEqual(first.data)
  const { width } = first
  const changed = [...renamed.data.keys()].filter((i) => renamed.data[i] !== first.data[i]).map((i) => i >> 2)
  expect(changed.length).toBeGreaterThan(20)
  const [, { x, y }] = places
  for (const at of changed) {
    expect(at % width).toBeGreaterThanOrEqual(x)
    expect(Math.floor(at / width)).toBeGreaterThanOrEqual(y + size.height)
  }
})
