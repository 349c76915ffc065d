// Which frames stay in memory: the latest used within the budget, and always the one on the bench.
import { expect, it } from 'vitest'

import type { Frame } from '../../src/frame/frame.ts'
import { createFrameCache } from '../../src/workbench/frame-cache.ts'

/** A frame of 100 bytes. */
const frame = () =>
  ({
    sensor: { codes: new Uint8Array(40) },
    overview: { rgba: new Uint8Array(30) },
    cells: { rgb: new Uint8Array(20), unsmoothed: new Uint8Array(10) },
  }) as unknown as Frame
const held = (cache: ReturnType<typeof createFrameCache>, ids: string) =>
  [...ids].filter((id) => cache.get(id) !== undefined).join('')

it('drops the one that was not used for longest', () => {
  const cache = createFrameCache(() => null, 300)
  for (const id of 'abc') cache.put(id, frame())
  cache.get('a')
  cache.put('d', frame())
  expect(held(cache, 'abcd')).toBe('acd')
})

it('keeps the frame on the bench, however many come after it', () => {
  const cache = createFrameCache(() => 'a', 300)
  for (const id of 'abcdef') cache.put(id, frame())
  expect(held(cache, 'abcdef')).toBe('aef')
})

it('keeps the one that came last, even beyond the budget', () => {
  const cache = createFrameCache(() => 'a', 50)
  for (const id of 'abc') cache.put(id, frame())
  expect(held(cache, 'abc')).toBe('ac')
})
