// Greys kept in the browser by camera and filter.
import { beforeEach, expect, it } from 'vitest'

import { rememberedGrey, rememberGrey } from '../../src/workbench/remembered-greys.ts'
import type { ShownFrame } from '../../src/workbench/session.ts'

function frame(filterNm: number | null | undefined, model?: string): ShownFrame {
  return { metadata: { make: 'Made-up', model }, facts: { filterNm } } as ShownFrame
}

beforeEach(() => localStorage.clear())

it('remembers the last grey of each camera and filter as ratios', () => {
  rememberGrey(frame(590, 'One'), { redStops: -1, blueStops: 0.5 })
  rememberGrey(frame(590, 'One'), { redStops: -1.5, blueStops: 0.75 })
  rememberGrey(frame(null, 'One'), { redStops: 0.2, blueStops: 0.1 })
  expect(rememberedGrey(frame(590, 'One'))).toEqual([1.5, -0.75])
  expect(rememberedGrey(frame(null, 'One'))).toEqual([-0.2, -0.1])
  expect(rememberedGrey(frame(720, 'One'))).toBeUndefined()
  expect(rememberedGrey(frame(590, 'Two'))).toBeUndefined()
})

it('remembers nothing while camera or filter is not known, and survives a spoilt store', () => {
  rememberGrey(frame(undefined, 'One'), { redStops: 1, blueStops: 1 })
  rememberGrey(frame(590), { redStops: 1, blueStops: 1 })
  expect(localStorage).toHaveLength(0)
  for (const spoilt of ['{', '[]', 'null', '{"Made-up One 590":["a",1]}', '{"Made-up One 590":5}']) {
    localStorage.setItem('rimeleaf.greys', spoilt)
    expect(rememberedGrey(frame(590, 'One'))).toBeUndefined()
  }
})
