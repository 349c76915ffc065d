// The picture on the canvas against the reference engine, and how it behaves: one drawing per animation frame, the same
// drawing for probe and commit, half size only while moving on slow graphics, and nothing lost with a lost context.
import { afterEach, beforeEach, expect, it } from 'vitest'

import type { PictureRequest, PictureView } from '../../src/gpu/picture-request.ts'
import type { PipelineDescription } from '../../src/pipeline/description.ts'
import { renderOnCpu } from '../../src/pipeline/render-on-cpu.ts'
import { createDrawnPicture, type DrawnPicture, surround } from './drawn-picture.ts'
import { sampleChain } from './sample-chain.ts'
import { sampleMosaic, sampleOverview } from './sample-frame.ts'

const overview = sampleOverview(240, 160, 4)
const frame = { sensor: sampleMosaic(960, 640), overview }
const margin = 20
/** One device pixel per overview pixel, so that no filtering stands between the engines. */
const overviewView: PictureView = { width: 280, height: 200, left: margin, top: margin, zoom: 0.25 }

let picture: DrawnPicture
beforeEach(() => {
  picture = createDrawnPicture()
  picture.renderer.setFrame(frame)
})
afterEach(() => picture.renderer.dispose())

const request = (description: PipelineDescription, rest: Partial<PictureRequest> = {}): PictureRequest => ({
  description,
  view: overviewView,
  quality: 'still',
  screenSpace: 'srgb',
  ...rest,
})

async function draw(wanted: PictureRequest): Promise<Uint8Array> {
  picture.renderer.draw(wanted)
  await picture.renderer.settled()
  return picture.pixels()
}

function cpuCodes(description: PipelineDescription): Float32Array {
  const { width, height, rgba } = overview
  const region = { x: 0, y: 0, width, height, frameWidth: width, frameHeight: height }
  return renderOnCpu(description, rgba, region).map((value) => value * 255)
}

/** Largest difference in codes over the overview's rectangle, from column `from` to before `to` of it. */
function apart(codes: Uint8Array, cpu: Float32Array, from = 0, to = overview.width): number {
  let worst = 0
  for (let y = 0; y < overview.height; y++) {
    for (let x = from; x < to; x++) {
      const at = ((y + margin) * overviewView.width + x + margin) * 4
      for (let c = 0; c < 3; c++) {
        worst = Math.max(worst, Math.abs(codes[at + c] - cpu[(y * overview.width + x) * 3 + c]))
      }
    }
  }
  return worst
}

const codesApart = (a: Uint8Array, b: Uint8Array) => {
  expect(a.length).toBe(b.length)
  return a.reduce((worst, code, i) => Math.max(worst, Math.abs(code - b[i])), 0)
}

it('draws the overview within one code of the reference, on the surround', async () => {
  const description = sampleChain()
  const codes = await draw(request(description))
  expect(apart(codes, cpuCodes(description))).toBeLessThanOrEqual(1)
  const grey = Math.round(surround * 255)
  expect([...codes.subarray(0, 4)]).toEqual([grey, grey, grey, 255])
  expect([...codes.subarray(-4)]).toEqual([grey, grey, grey, 255])
})

it('draws two descriptions side by side, divided where asked', async () => {
  const [one, two] = [sampleChain(), sampleChain(0.4, -0.6)]
  const codes = await draw(request(one, { second: { description: two, divide: 0.5 } }))
  const middle = overviewView.width / 2 - margin
  expect(apart(codes, cpuCodes(one), 0, middle)).toBeLessThanOrEqual(1)
  expect(apart(codes, cpuCodes(two), middle)).toBeLessThanOrEqual(1)
})

it('commits what hovering showed, to the code', async () => {
  await draw(request(sampleChain()))
  const hovered = (await draw(request(sampleChain(0.21, -0.33), { quality: 'moving' }))).slice()
  const committed = await draw(request(sampleChain(0.21, -0.33)))
  expect(codesApart(committed, hovered)).toBe(0)
})

it('draws at most once per animation frame, the last request', async () => {
  await draw(request(sampleChain()))
  const before = picture.count()
  const last = sampleChain(0.3, 0.1)
  for (let i = 0; i < 20; i++) picture.renderer.draw(request(sampleChain(i / 50, 0.1)))
  const codes = await draw(request(last))
  expect(picture.count()).toBe(before + 1)
  expect(apart(codes, cpuCodes(last))).toBeLessThanOrEqual(1)
})

it('on software graphics a moving picture is drawn coarser first and the same as a still one in the end', async () => {
  expect(picture.renderer.capabilities.softwareGl).toBe(true)
  const description = sampleChain()
  const still = (await draw(request(description))).slice()
  await draw(request(sampleChain(0, 0)))
  const before = picture.count()
  const settled = await draw(request(description, { quality: 'moving' }))
  expect(picture.count()).toBe(before + 2)
  expect(codesApart(settled, still)).toBe(0)
})

it('redraws the same picture after the context was lost', async () => {
  const description = sampleChain()
  const before = (await draw(request(description))).slice()
  const loss = picture.canvas.getContext('webgl2')!.getExtension('WEBGL_lose_context')!
  const restored = new Promise((resolve) => picture.canvas.addEventListener('webglcontextrestored', resolve))
  loss.loseContext()
  await new Promise((resolve) => setTimeout(resolve, 50))
  loss.restoreContext()
  await restored
  await picture.renderer.settled()
  expect(codesApart(picture.pixels(), before)).toBe(0)
})

it('shows the surround alone while there is no frame', async () => {
  picture.renderer.setFrame(null)
  picture.renderer.draw(request(sampleChain()))
  await picture.renderer.settled()
  expect(picture.canvas.width).toBe(overviewView.width)
})

it('draws thumbnails of many descriptions as it draws the picture', async () => {
  const descriptions = [sampleChain(), sampleChain(0.4, -0.6), sampleChain(-1, 0.9)]
  const thumbnails = (await picture.renderer.thumbnails(descriptions, overview.width))!
  expect(thumbnails.map(({ width, height }) => `${width}×${height}`)).toEqual(['240×160', '240×160', '240×160'])
  thumbnails.forEach(({ data }, i) => {
    const cpu = cpuCodes(descriptions[i])
    const worst = cpu.reduce((most, code, j) => {
      const drawn = data[Math.floor(j / 3) * 4 + (j % 3)]
      return Math.max(most, Math.abs(drawn - code))
    }, 0)
    expect(worst).toBeLessThanOrEqual(1)
  })
})

it('gives no thumbnails of a frame that is no longer shown', async () => {
  const thumbnails = picture.renderer.thumbnails([sampleChain()], 60)
  picture.renderer.setFrame(null)
  expect(await thumbnails).toBeNull()
})
