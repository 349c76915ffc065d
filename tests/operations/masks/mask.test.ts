import Color from 'colorjs.io'
import { describe as group, expect, it, test } from 'vitest'
import type { Pixel } from '../../../src/operations/define.ts'
import {
  type Combine,
  describeMask,
  makePart,
  maskKinds,
  type MaskPart,
  maskWeight,
  readMask,
  type StepMask,
} from '../../../src/operations/masks/mask.ts'
import { plainFacts } from '../../support/apply-operation.ts'

const pixelAt = (x: number, y: number, rgb: readonly number[] = [0.2, 0.2, 0.2]): Pixel =>
  Float64Array.of(rgb[0], rgb[1], rgb[2], 0, x, y)
const maskOf = (...parts: MaskPart[]): StepMask => ({ parts, inverted: false, strength: 1 })
const weight = (mask: StepMask, pixel: Pixel) => maskWeight(describeMask(mask, plainFacts, {}), pixel)

group('each kind', () => {
  it.each(maskKinds.map(({ id }) => [id]))(
    '%s stays in 0…1 whatever comes in, at the ends of its controls too',
    (id) => {
      const kind = maskKinds.find((candidate) => candidate.id === id)!
      const ends = (['min', 'max'] as const).map((end) =>
        Object.fromEntries(
          Object.entries(kind.controls).map(([name, control]) => [
            name,
            control.kind === 'slider' ? control[end] : control.initial,
          ]),
        ),
      )
      for (const values of [{}, ...ends])
        for (const level of [-1, 0, 1e-9, 0.2, 16])
          for (const rgb of [
            [level, level, level],
            [level, 0, 0.3],
            [0.1, level, -0.2],
          ]) {
            const is = weight(maskOf(makePart(id, values)), pixelAt(0.3, 0.8, rgb))
            expect(is >= 0 && is <= 1, `${id} ${rgb}: ${is}`).toBe(true)
          }
    },
  )

  it('a round area is round in a frame of any aspect, half way out at half its softness', () => {
    const round = maskOf(makePart('radial', { centre: [0.5, 0.5], halfWidth: 0.2, halfHeight: 0.2, softness: 0.5 }))
    const [right, below] = [pixelAt(0.5 + 0.15, 0.5), pixelAt(0.5, 0.5 + 0.15 * plainFacts.aspect)]
    expect(weight(round, pixelAt(0.5, 0.5))).toBe(1)
    expect(weight(round, right)).toBeCloseTo(0.5, 9)
    expect(weight(round, below)).toBeCloseTo(0.5, 9)
    expect(weight(round, pixelAt(0.71, 0.5))).toBe(0)
  })

  it('a graduated area ends square to its line in a frame of any aspect', () => {
    const graduated = maskOf(makePart('graduated', { ends: [0.2, 0.2, 0.6, 0.6] }))
    expect(weight(graduated, pixelAt(0.2, 0.2))).toBe(1)
    expect(weight(graduated, pixelAt(0.6, 0.6))).toBe(0)
    expect(weight(graduated, pixelAt(0.4, 0.4))).toBeCloseTo(0.5, 9)
    // From the middle along the normal: in widths the line runs (.4, .4 / aspect), so its normal is (−.4 / aspect, .4).
    const [dx, dy] = [-0.1 / plainFacts.aspect, 0.1 * plainFacts.aspect]
    expect(weight(graduated, pixelAt(0.4 + dx, 0.4 + dy))).toBeCloseTo(0.5, 9)
  })

  it('a range of levels counts from mid grey, .18 (18 % reflectance, common practice)', () => {
    const range = maskOf(makePart('level', { fromEv: -1, toEv: 1, softnessEv: 1 }))
    const at = (ev: number) =>
      weight(
        range,
        pixelAt(
          0.5,
          0.5,
          [0.18, 0.18, 0.18].map((grey) => grey * 2 ** ev),
        ),
      )
    expect([-2.1, -1, 0, 1, 2.1].map(at)).toEqual([0, 1, 1, 1, 0])
    expect(at(-1.5)).toBeCloseTo(0.5, 9)
  })

  // The hue of the red is taken from colorjs.io, an implementation of CSS Color 4 of its own.
  it('a hue takes its own side, not the other, and no grey', () => {
    const hueDeg = new Color('rec2020-linear', [0.5, 0.05, 0.05]).to('oklch').coords[2]!
    const red = maskOf(makePart('hue', { hueDeg, widthDeg: 30, softnessDeg: 20, leastChroma: 0.03 }))
    expect(weight(red, pixelAt(0, 0, [0.5, 0.05, 0.05]))).toBe(1)
    expect(weight(red, pixelAt(0, 0, [0.05, 0.05, 0.5]))).toBe(0)
    expect(weight(red, pixelAt(0, 0, [0.3, 0.3, 0.3]))).toBe(0)
    const every = maskOf(makePart('hue', { hueDeg, widthDeg: 180 }))
    expect(weight(every, pixelAt(0, 0, [0.05, 0.05, 0.5]))).toBe(1)
  })
})

group('parts together', () => {
  const left = makePart('graduated', { ends: [0.499, 0.5, 0.501, 0.5] })
  const upper = makePart('graduated', { ends: [0.5, 0.499, 0.5, 0.501] })
  const corners = [pixelAt(0.2, 0.2), pixelAt(0.8, 0.2), pixelAt(0.2, 0.8), pixelAt(0.8, 0.8)]

  it.each<[Combine, number[]]>([
    ['or', [1, 1, 1, 0]],
    ['and', [1, 0, 0, 0]],
    ['not', [0, 0, 1, 0]],
  ])('“%s” joins left and upper half', (combine, wanted) => {
    expect(corners.map((pixel) => weight(maskOf(left, { ...upper, combine }), pixel))).toEqual(wanted)
  })

  it('turned around parts and wholes, and strength', () => {
    const turned = maskOf({ ...left, inverted: true })
    expect(corners.map((pixel) => weight(turned, pixel))).toEqual([0, 1, 0, 1])
    expect(weight({ ...maskOf(left), inverted: true, strength: 0.25 }, corners[1])).toBe(0.25)
    expect(weight({ parts: [], inverted: false, strength: 0.25 }, corners[1])).toBe(0.25)
  })
})

test('a saved mask is completed and clamped, one that limits nothing is none, and what is unknown is refused in words', () => {
  const bare = { kind: 'level', values: {}, inverted: false, combine: 'or' } as const
  expect(readMask({ parts: [bare], inverted: false, strength: 3 })).toEqual(maskOf(makePart('level')))
  expect(readMask(JSON.parse(JSON.stringify(maskOf(makePart('hue')))))).toEqual(maskOf(makePart('hue')))
  expect(readMask({ parts: [], inverted: false, strength: 1 })).toBeNull()
  expect(() => readMask(maskOf({ ...bare, kind: 'weather' }))).toThrow(/“weather” here; known are foliage/)
  expect(() => readMask(maskOf(...Array.from({ length: 7 }, () => bare)))).toThrow(/at most 6/)
})
