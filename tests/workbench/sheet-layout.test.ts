// The sheet of a board: expected rows and sizes worked by hand.
import { expect, it } from 'vitest'

import { layoutSheet } from '../../src/workbench/sheet-layout.ts'

const landscape = { width: 600, height: 400 }

it('one picture stands alone with its margins', () => {
  const { width, height, places } = layoutSheet(1, landscape)
  expect({ width, height }).toEqual({ width: 48 + 600 + 48, height: 48 + 64 + 400 + 64 + 48 })
  expect(places).toEqual([{ x: 48, y: 112 }])
})

it('many pictures fill rows of one width, none over another or its words', () => {
  for (const [count, picture] of [
    [5, landscape],
    [12, landscape],
    [7, { width: 400, height: 600 }],
  ] as const) {
    const { width, height, places } = layoutSheet(count, picture)
    expect(places).toHaveLength(count)
    expect(width / height).toBeGreaterThan(1.2)
    expect(width / height).toBeLessThan(2.2)
    for (const [i, { x, y }] of places.entries()) {
      expect(x + picture.width).toBeLessThanOrEqual(width - 48)
      expect(y + picture.height + 64).toBeLessThanOrEqual(height - 48)
      for (const other of places.slice(i + 1)) {
        const apart = Math.abs(other.x - x) >= picture.width || Math.abs(other.y - y) >= picture.height + 64
        expect(apart).toBe(true)
      }
    }
  }
})

it('refuses a sheet of nothing', () => {
  expect(() => layoutSheet(0, landscape)).toThrow('keep a mark first')
})
