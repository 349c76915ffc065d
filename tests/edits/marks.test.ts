// The board's list; expected orders worked by hand.
import { describe, expect, it } from 'vitest'

import {
  addMark,
  type Marks,
  mergeMarks,
  moveMark,
  moveMarkGains,
  pinMark,
  putBackMark,
  removeMark,
  renameMark,
} from '../../src/edits/marks.ts'

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

  it('puts a removed one back in its place, under another id where its own is taken', () => {
    const [, second, third] = three
    expect(putBackMark(removeMark(three, second.id), second, 1)).toEqual(three)
    expect(putBackMark(three, second, 1)).toBe(three)
    const renewed = addMark(removeMark(three, third.id), gains, null, 'D')
    expect(renewed[2].id).toBe(third.id)
    const back = putBackMark(renewed, third, 2)
    expect(names(back)).toBe('ABCD')
    expect(new Set(back.map(({ id }) => id)).size).toBe(4)
    const pinned = pinMark(three, second.id, true)
    expect(names(putBackMark(removeMark(pinned, third.id), third, 0))).toBe('BCA')
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

  it('lets a mark moved by its gains leave its place', () => {
    const moved = moveMarkGains(three, three[1].id, { redStops: -2, blueStops: 1 })
    expect(moved[1]).toMatchObject({ name: 'B', place: null, gains: { redStops: -2, blueStops: 1 } })
    expect(moved[0]).toBe(three[0])
  })

  it('takes over marks it does not hold, under ids of its own, pinned ones first', () => {
    const others = pinMark(addMark(three, gains, null, 'gate'), 'm4', true)
    const merged = mergeMarks(three, others)
    expect(names(merged)).toBe('gateABC')
    expect(new Set(merged.map((mark) => mark.id)).size).toBe(4)
    expect(mergeMarks(merged, others)).toBe(merged)
  })
})
