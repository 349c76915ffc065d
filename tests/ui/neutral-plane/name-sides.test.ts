// Names on the plane stand where they cover nothing.
import { expect, test } from 'vitest'
import { nameSides } from '../../../src/ui/neutral-plane/name-sides.ts'

test('a point alone has its name on the right', () => {
  expect(nameSides([{ x: 50, y: 50, name: 'A' }])).toEqual(['right'])
})

test('neighbours turn their names away from each other', () => {
  const pair = [
    { x: 50, y: 50, name: 'A' },
    { x: 62, y: 51, name: 'B' },
  ]
  expect(nameSides(pair)).toEqual(['left', 'right'])
})

test('a name gives way to the neutral, and to names set before it', () => {
  expect(nameSides([{ x: 50, y: 50, name: 'A' }], [{ x: 64, y: 50 }])).toEqual(['left'])
  const column = [0, 12, 24].map((y) => ({ x: 50, y, name: 'sand' }))
  const [first, second, third] = nameSides(column)
  expect(first).toBe('right')
  expect(second).toBe('left')
  expect(third).toBe('right')
})

test('a name stays on the pad', () => {
  const size = { width: 270, height: 200 }
  const at = (x: number, y: number) => nameSides([{ x, y, name: 'stone wall' }], [], size)
  expect(at(100, 100)).toEqual(['right'])
  expect(at(250, 100)).toEqual(['left'])
  expect(nameSides([{ x: 250, y: 100, name: 'stone wall' }], [{ x: 235, y: 100 }], size)).toEqual(['left'])
})

test('where there is no room the name stands on the right all the same', () => {
  const crowd = Array.from({ length: 12 }, () => ({ x: 50, y: 50, name: 'weathered boards' }))
  expect(nameSides(crowd).at(-1)).toBe('right')
})
