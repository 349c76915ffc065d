// The board's list; expected orders worked by hand. The midpoint of a blend is held to the geometric mean of the gains.
import { describe, expect, it } from 'vitest'

import { addMark, blendGains, type Marks, moveMark, pinMark, removeMark, renameMark } from '../../src/edits/marks.ts'

const gains = { redStops: -1, blueStops: 0.5 }
const three: Marks = addMark(addMark(addMark([], gains, null), gains, { x: 0.1, y: 0.2 }), gains, null)
const names = (marks: Marks) => marks.map((mark) => mark.name).join('')

describe('marks', () => {
  it('names them by the next free letter and never reuses an id', () => {
    expect(names(three)).toBe('ABC')
    const less = removeMark(three, three[0].id)
    const more = addMark(less, gains, null)
    expect(names(more)).toBe('BCA')
    expect(new Set(more.map((mark) => mark.id)).size).toBe(3)
  })

  it('keeps pinned ones first and moves within its own kind', () => {
    const pinned = pinMark(three, three[2].id, true)
    expect(names(pinned)).toBe('CAB')
    expect(names(moveMark(pinned, three[1].id, 0))).toBe('CBA')
    expect(names(moveMark(pinned, three[2].id, 9))).toBe('CAB')
  })

  it('leaves the old name where the new one is empty', () => {
    expect(names(renameMark(three, three[0].id, '  '))).toBe('ABC')
    expect(names(renameMark(three, three[0].id, ' Z '))).toBe('ZBC')
  })

  it('blends in stops: ends exact, the middle the geometric mean', () => {
    const a = { redStops: -1.91, blueStops: 1.04 }
    const b = { redStops: -2.17, blueStops: 1.42 }
    expect(blendGains(a, b, 0)).toEqual(a)
    expect(blendGains(a, b, 1)).toEqual(b)
    const middle = blendGains(a, b, 0.5)
    expect(2 ** middle.redStops).toBeCloseTo(Math.sqrt(2 ** a.redStops * 2 ** b.redStops), 12)
    expect(2 ** middle.blueStops).toBeCloseTo(Math.sqrt(2 ** a.blueStops * 2 ** b.blueStops), 12)
  })
})
