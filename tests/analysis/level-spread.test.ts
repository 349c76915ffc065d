import { expect, test } from 'vitest'
import { levelSpread } from '../../src/analysis/level-spread.ts'

/** Levels 0, 1, …, 99 hundredths, as greys out of order. */
const spread = levelSpread(Float32Array.from({ length: 300 }, (_, i) => ((Math.floor(i / 3) * 37) % 100) / 100))

test('shares and levels are those of the ordered list (counted by hand)', () => {
  expect(spread.shareBelow(0.255)).toBe(0.26)
  expect(spread.shareBelow(-1)).toBe(0)
  expect(spread.shareBelow(9)).toBe(1)
  expect(spread.levelAt(0)).toBe(0)
  expect(spread.levelAt(0.5)).toBeCloseTo(0.5, 6)
  expect(spread.levelAt(1)).toBeCloseTo(0.99, 6)
})

test('the histogram holds every pixel on its axis and leaves out what lies beyond', () => {
  const even = spread.histogram(10, (level) => level)
  // A level on the border of two bins may fall into either, as 32-bit floats round it.
  for (const share of even) expect(Math.abs(share - 0.1)).toBeLessThan(0.011)
  expect(even.reduce((sum, share) => sum + share)).toBeCloseTo(1, 9)
  expect(spread.histogram(10, (level) => level * 2).reduce((sum, share) => sum + share)).toBeCloseTo(0.51, 9)
})

test('without pixels there are no levels', () => {
  expect(() => levelSpread(new Float32Array(0))).toThrow('without pixels')
})
