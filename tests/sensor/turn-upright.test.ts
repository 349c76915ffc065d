// Turning upright: every photosite keeps its code, colour and black wherever the orientation takes it. The eight meanings
// are those of TIFF 6.0, tag 274: where row 0 and column 0 of the stored picture lie in the upright one.
import { describe, expect, it } from 'vitest'
import type { CfaColour } from '../../src/frame/frame.ts'
import { makeTable } from '../../src/sensor/cfa.ts'
import type { Orientation } from '../../src/sensor/orientation.ts'
import { uprightLinear, uprightMosaic } from '../../src/sensor/turn-upright.ts'
import { bayer, sixBySix } from '../support/synthetic-sensor.ts'

/** The upright place of the stored photosite (x, y), said by the sides that row 0 and column 0 come to lie at. */
const uprightOf: Record<Orientation, (x: number, y: number, width: number, height: number) => [number, number]> = {
  1: (x, y) => [x, y], // row 0 top, column 0 left
  2: (x, y, width) => [width - 1 - x, y], // top, right
  3: (x, y, width, height) => [width - 1 - x, height - 1 - y], // bottom, right
  4: (x, y, _, height) => [x, height - 1 - y], // bottom, left
  5: (x, y) => [y, x], // left, top
  6: (x, y, _, height) => [height - 1 - y, x], // right, top
  7: (x, y, width, height) => [height - 1 - y, width - 1 - x], // right, bottom
  8: (x, y, width) => [y, width - 1 - x], // left, bottom
}

const orientations = [1, 2, 3, 4, 5, 6, 7, 8] as const
const blackColumns = 2
const black = [10, 20, 30, 40, 50, 60]

describe.each([
  { pattern: 'Bayer', cfa: bayer },
  { pattern: '6×6', cfa: sixBySix },
])('$pattern', ({ cfa }) => {
  const stored = {
    codes: Uint16Array.from({ length: 100 * 90 }, (_, i) => i),
    stride: 100,
    samples: 1 as const,
    colours: { columns: cfa.columns, rows: cfa.rows, entries: cfa.colours },
    black: makeTable(blackColumns, 3, (x, y) => black[y * blackColumns + x]),
    white: 9999,
  }
  it.each([
    { name: 'even size', area: { x: 4, y: 2, width: 80, height: 70 } },
    { name: 'odd size and origin', area: { x: 5, y: 3, width: 75, height: 67 } },
    { name: 'odd by even, all columns', area: { x: 0, y: 7, width: 100, height: 66 } },
  ])('$name', ({ area }) => {
    const wrong: string[] = []
    for (const orientation of orientations) {
      const mosaic = uprightMosaic({ ...stored, codes: stored.codes.slice() }, area, orientation)
      const turned = orientation >= 5
      expect([mosaic.width, mosaic.height]).toEqual(turned ? [area.height, area.width] : [area.width, area.height])
      for (let y = 0; y < area.height; y++) {
        for (let x = 0; x < area.width; x++) {
          const [column, row] = uprightOf[orientation](x, y, area.width, area.height)
          const at = (table: { columns: number; rows: number }) =>
            (row % table.rows) * table.columns + (column % table.columns)
          const is = [
            mosaic.codes[row * mosaic.width + column],
            mosaic.cfa.colours[at(mosaic.cfa)],
            mosaic.black.codes[at(mosaic.black)],
          ]
          const [storedX, storedY] = [area.x + x, area.y + y]
          const colour: CfaColour = cfa.colours[(storedY % cfa.rows) * cfa.columns + (storedX % cfa.columns)]
          const wanted = [
            storedY * 100 + storedX,
            colour,
            black[(storedY % 3) * blackColumns + (storedX % blackColumns)],
          ]
          if (is.some((value, i) => value !== wanted[i]))
            wrong.push(`orientation ${orientation} at (${x}, ${y}): ${is}, not ${wanted}`)
        }
      }
    }
    expect(wrong).toEqual([])
  })
})

it('three channels stay together', () => {
  const stored = {
    codes: Uint16Array.from({ length: 6 * 5 * 3 }, (_, i) => i),
    stride: 6,
    samples: 3 as const,
    black: [1, 2, 3] as const,
    white: 99,
  }
  for (const orientation of orientations) {
    const area = { x: 1, y: 1, width: 4, height: 3 }
    const { codes, width } = uprightLinear({ ...stored, codes: stored.codes.slice() }, area, orientation)
    for (let y = 0; y < 3; y++) {
      for (let x = 0; x < 4; x++) {
        const [column, row] = uprightOf[orientation](x, y, 4, 3)
        const from = ((y + 1) * 6 + x + 1) * 3
        expect(Array.from(codes.subarray((row * width + column) * 3, (row * width + column) * 3 + 3))).toEqual([
          from,
          from + 1,
          from + 2,
        ])
      }
    }
  }
})
