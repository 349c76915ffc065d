// Words that tell suggestions of one reason apart: each true of the numbers it stands for, none twice. What must hold is said
// by the words themselves.
import fc from 'fast-check'
import { expect, it } from 'vitest'

import { type Described, tellApart } from '../../../src/analysis/candidates/tell-apart.ts'

type Place = Described['place']

const described = (reason: string, brightStops: number, area: number, along: number, place = [0.5, 0.5] as Place) => {
  return { reason, place, features: { brightStops, area, along, texture: 0.2, bulge: 0 } }
}

it('leaves reasons alone that nothing else bears', () => {
  expect(tellApart([described('bright', 0, 0.1, 0.5), described('even', 0, 0.1, 0.5)])).toEqual(['bright', 'even'])
  expect(tellApart([described('', 0, 0.1, 0.5, [0.9, 0.1])])).toEqual(['top right'])
})

it('takes brightness first, then place, then area, then colour', () => {
  expect(tellApart([described('even', -2, 0.1, 0.5), described('even', -1, 0.1, 0.5)])).toEqual([
    'even, darker',
    'even, brighter',
  ])
  expect(
    tellApart([described('even', -1, 0.1, 0.5, [0.1, 0.9]), described('even', -1.1, 0.3, 0.5, [0.4, 0.2])]),
  ).toEqual(['even, bottom left', 'even, top'])
  expect(
    tellApart([described('even', -1, 0.1, 0.5), described('even', -1.1, 0.3, 0.5), described('even', -1.2, 0.02, 0.5)]),
  ).toEqual(['even, second largest area', 'even, largest area', 'even, third largest area'])
  expect(tellApart([described('', -1, 0.1, 0.5), described('', -1, 0.1, 0.6)])).toEqual([
    'less red to blue',
    'more red to blue',
  ])
})

it('leaves no two alike', () => {
  const one = fc.record({
    reason: fc.constantFrom('even', 'bright', ''),
    brightStops: fc.double({ min: -6, max: 0, noNaN: true }),
    area: fc.double({ min: 0.001, max: 1, noNaN: true }),
    along: fc.double({ min: 0, max: 1, noNaN: true }),
    place: fc.tuple(fc.double({ min: 0, max: 1, noNaN: true }), fc.double({ min: 0, max: 1, noNaN: true })),
  })
  const list = fc.uniqueArray(one, { minLength: 1, maxLength: 8, selector: ({ along }) => along })
  fc.assert(
    fc.property(list, (all) => {
      const reasons = tellApart(all.map((at) => described(at.reason, at.brightStops, at.area, at.along, at.place)))
      expect(new Set(reasons).size).toBe(reasons.length)
    }),
  )
})
