import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { makePart } from '../../../src/operations/masks/mask.ts'
import { isPickable, pickedValues } from '../../../src/ui/places/picked-values.ts'

const grey = [0.18, 0.18, 0.18] as const
const pick = (kind: string, colour: readonly [number, number, number] | null, materialStops: number | null = 0) =>
  pickedValues(makePart(kind), { colour, materialStops })

test('a material is told halfway to grey, on its own side only', () => {
  expect(pick('foliage', grey, -0.8)).toMatchObject({ borderStops: -0.4, softness: 0.4 })
  expect(pick('sky', grey, 0.5)).toMatchObject({ borderStops: 0.25, softness: 0.25 })
  expect(pick('foliage', grey, 0.3)).toMatch(/not bluer than grey/)
  expect(pick('sky', grey, -0.3)).toMatch(/not redder than grey/)
  expect(pick('sky', grey, null)).toMatch(/still being told apart/)
})

test('a level becomes the middle of a range of two stops, counted from mid grey (18 %, common practice)', () => {
  expect(pick('level', grey)).toMatchObject({ fromEv: -1, toEv: 1 })
  expect(pick('level', [0.72, 0.72, 0.72])).toMatchObject({ fromEv: 1, toEv: 3 })
  expect(pick('level', null)).toMatch(/Clipped or too dark/)
})

/** Hue by colorjs.io, an implementation of CSS Color 4 of its own, as ±180°. */
function reference(colour: readonly [number, number, number]): number {
  const hueDeg = new Color('rec2020-linear', [...colour]).to('oklch').coords[2]!
  return hueDeg > 180 ? hueDeg - 360 : hueDeg
}

test('a hue is taken as an angle of ±180°, and grey has none', () => {
  const hueOf = (colour: readonly [number, number, number]) => (pick('hue', colour) as { hueDeg: number }).hueDeg
  for (const colour of [[0.5, 0, 0] as const, [0, 0, 0.5] as const, [0.1, 0.5, 0.3] as const])
    expect(Math.abs(hueOf(colour) - reference(colour))).toBeLessThanOrEqual(0.51)
  expect(pick('hue', grey)).toMatch(/Too near to grey/)
})

test('areas are dragged, not picked', () => {
  expect(
    ['foliage', 'sky', 'level', 'hue', 'radial', 'graduated'].filter((kind) => isPickable(makePart(kind))),
  ).toEqual(['foliage', 'sky', 'level', 'hue'])
})
