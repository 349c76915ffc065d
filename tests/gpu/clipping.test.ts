// Marks on what clips: drawn where the counted truth says so and nowhere else, each channel with lines of its own slant.
import { afterEach, expect, it } from 'vitest'

import { addStep } from '../../src/edits/stack.ts'
import type { MosaicData } from '../../src/frame/frame.ts'
import { makeOverview } from '../../src/frame/overview.ts'
import { createPictureRenderer, type PictureRenderer } from '../../src/gpu/picture-renderer.ts'
import type { ClippingShown } from '../../src/gpu/picture-request.ts'
import { describe } from '../../src/pipeline/describe.ts'
import { facts } from './sample-frame.ts'

const side = 96
/** A flat Bayer frame whose left half is clipped in one colour. */
function flatFrame(clipped: 0 | 1 | 2) {
  const colours = [0, 1, 1, 2] as const
  const codes = Uint16Array.from({ length: side * side }, (_, i) => {
    const [x, y] = [i % side, Math.floor(i / side)]
    return x < side / 2 && colours[(y & 1) * 2 + (x & 1)] === clipped ? 1000 : 300
  })
  const sensor: MosaicData = {
    kind: 'mosaic',
    width: side,
    height: side,
    codes,
    cfa: { columns: 2, rows: 2, colours: [...colours] },
    black: { columns: 1, rows: 1, codes: [0] },
    white: 1000,
  }
  return { sensor, overview: makeOverview(sensor) }
}

const chain = addStep([], 'outputTransform')
let renderer: PictureRenderer | null = null
afterEach(() => renderer?.dispose())

/** Codes of the drawn picture by place, upper left first. */
async function draw(frame: ReturnType<typeof flatFrame>, clipping: ClippingShown, exposed = chain) {
  const canvas = Object.assign(document.createElement('canvas'), { width: side, height: side })
  renderer = createPictureRenderer(canvas, { surround: 0.3 })
  renderer.setFrame(frame)
  const view = { width: side, height: side, left: 0, top: 0, zoom: 1 }
  renderer.draw({ description: describe(exposed, facts), view, clipping, quality: 'still', screenSpace: 'srgb' })
  await renderer.settled()
  const copy = new OffscreenCanvas(side, side).getContext('2d')!
  copy.drawImage(canvas, 0, 0)
  const { data } = copy.getImageData(0, 0, side, side)
  return (x: number, y: number) => [...data.subarray((y * side + x) * 4, (y * side + x) * 4 + 3)].join()
}

type Drawn = Awaited<ReturnType<typeof draw>>
const rows = Array.from({ length: side }, (_, y) => y)
const isMark = (colour: string) => colour === '0,0,0' || colour === '255,255,255'

it.each([0, 1, 2] as const)(
  'the sensor’s channel %i is marked where it clips, and nothing else is touched',
  async (channel) => {
    const plain = await draw(flatFrame(channel), 'none')
    const drawn = await draw(flatFrame(channel), 'sensor')
    const marks = (columns: number[]) => columns.flatMap((x) => rows.filter((y) => isMark(drawn(x, y)))).length
    expect(marks([10, 20, 30, 40]) / (4 * side)).toBeGreaterThan(0.3)
    expect(marks([60, 70, 80, 90])).toBe(0)
    for (const y of rows) expect(drawn(70, y)).toBe(plain(70, y))
  },
)

it('red leans one way, green the other, blue lies flat', async () => {
  const same = (drawn: Drawn, dy: number) =>
    rows.slice(8, -8).filter((y) => isMark(drawn(20, y)) && drawn(20, y) === drawn(21, y + dy)).length
  const lean: number[][] = []
  for (const channel of [0, 1, 2] as const) {
    const drawn = await draw(flatFrame(channel), 'sensor')
    lean.push([-1, 0, 1].map((dy) => same(drawn, dy)))
  }
  const most = lean.map((counts) => counts.indexOf(Math.max(...counts)) - 1)
  expect(new Set(most)).toEqual(new Set([-1, 0, 1]))
  expect(most[2]).toBe(0)
})

it('the output is marked where a channel reaches white, and dotted where all is black', async () => {
  const bright = addStep(chain, 'exposureContrast', { exposureEv: 3 })
  const white = await draw(flatFrame(0), 'output', bright)
  expect(rows.filter((y) => isMark(white(70, y))).length).toBeGreaterThan(side * 0.6)
  const dark = await draw(flatFrame(0), 'output', addStep(chain, 'exposureContrast', { exposureEv: -16 }))
  const dots = rows.flatMap((y) => rows.filter((x) => dark(x, y) === '255,255,255')).length
  expect(dots / side ** 2).toBeGreaterThan(0.1)
  expect(dots / side ** 2).toBeLessThan(0.25)
})
