// A painted frame whose parts are known: every part must be stood for by one place inside it. Of our own making.
import { expect, test } from 'vitest'
import { referencePlaces } from '../../src/analysis/reference-places.ts'
import { makeCellGrid } from '../../src/frame/cell-grid.ts'
import type { Overview } from '../../src/frame/frame.ts'
import { usualNoise } from '../../src/frame/noise-model.ts'

/** Five upright stripes of different colour and level, the last one clipped in its lower half. */
const stripes = [
  [0.5, 0.45, 0.4],
  [0.3, 0.1, 0.05],
  [0.08, 0.1, 0.12],
  [0.02, 0.02, 0.02],
  [0.6, 0.2, 0.3],
]
function painted(): Overview {
  const [width, height] = [300, 200]
  const rgba = new Float32Array(width * height * 4)
  for (let i = 0; i < width * height; i++) {
    const [x, y] = [i % width, Math.floor(i / width)]
    const colour = stripes[Math.floor(x / 60)]
    const grain = 1 + 0.02 * Math.sin(x * 12.9898 + y * 78.233)
    const clipped = x >= 240 && y >= 100
    rgba.set([...colour.map((level) => (clipped ? 1 : level * grain)), clipped ? 1 : Math.max(...colour)], i * 4)
  }
  return { width, height, rgba, scale: 2 }
}

const placesOf = (overview: Overview) => referencePlaces(makeCellGrid(overview, usualNoise(), 1), 5)

test('one place in every part, brightest first, none in the clipped one', () => {
  const places = placesOf(painted())
  expect(places.map(({ x }) => Math.floor(x * 5))).toEqual([0, 4, 1, 2, 3])
  expect(places.every(({ x, y }) => x < 0.8 || y < 0.5)).toBe(true)
})

test('a frame without anything usable has none', () => {
  const black = { width: 60, height: 40, rgba: new Float32Array(60 * 40 * 4), scale: 2 }
  expect(placesOf(black)).toEqual([])
})

test('a frame that is nearly all clipped has as many places as there are usable squares', () => {
  const { rgba, ...size } = painted()
  const [left, top] = [100, 60]
  for (let i = 0; i < size.width * size.height; i++) {
    const [x, y] = [i % size.width, Math.floor(i / size.width)]
    if (x < left || x >= left + 30 || y < top || y >= top + 16) rgba.fill(1, i * 4, i * 4 + 4)
  }
  const places = placesOf({ ...size, rgba })
  expect(places.length).toBeGreaterThan(0)
  expect(places.length).toBeLessThan(5)
  for (const { x, y } of places) {
    expect(Math.abs(x * size.width - left - 15)).toBeLessThan(15)
    expect(Math.abs(y * size.height - top - 8)).toBeLessThan(8)
  }
})
