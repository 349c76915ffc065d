// The draw timer against a graphics queue that finishes when the test says so.
import { afterEach, expect, it, vi } from 'vitest'

import { createDrawTimer } from '../../src/gpu/draw-timer.ts'

/** A context whose fences are passed once `finished` is true, and a clock. */
function queue() {
  const state = { finished: false, now: 0 }
  const SIGNALED = 1
  const gl = {
    SIGNALED,
    fenceSync: () => ({}),
    deleteSync: () => undefined,
    flush: () => undefined,
    isContextLost: () => false,
    getSyncParameter: () => (state.finished ? SIGNALED : 0),
  }
  vi.spyOn(performance, 'now').mockImplementation(() => state.now)
  const timer = createDrawTimer(gl as unknown as WebGL2RenderingContext)
  return {
    timer,
    draw(milliseconds: number, whole = true) {
      state.finished = false
      timer.mark(whole)
      expect(timer.busy()).toBe(true)
      state.now += milliseconds
      state.finished = true
      expect(timer.busy()).toBe(false)
    },
  }
}
afterEach(() => vi.restoreAllMocks())

it('calls graphics slow when the last whole pictures all were, and no longer after a quick one', () => {
  const { timer, draw } = queue()
  draw(80)
  draw(80)
  expect(timer.slow()).toBe(false)
  draw(80)
  expect(timer.slow()).toBe(true)
  draw(10)
  expect(timer.slow()).toBe(false)
})

it('does not judge by pictures at half size, nor by what a lost context left', () => {
  const { timer, draw } = queue()
  for (let i = 0; i < 5; i++) draw(80, false)
  expect(timer.slow()).toBe(false)
  for (let i = 0; i < 3; i++) draw(80)
  timer.reset()
  expect(timer.slow()).toBe(false)
  expect(timer.busy()).toBe(false)
})
