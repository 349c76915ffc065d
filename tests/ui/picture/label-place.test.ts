// The words beside the ring: over all windows that can hold both, they never cover the sample and never leave the window.
import fc from 'fast-check'
import { expect, test } from 'vitest'

import { placeLabel } from '../../../src/ui/picture/label-place.ts'

const label = { width: 240, height: 60 }
const situations = fc.record({
  window: fc.record({ width: fc.integer({ min: 300, max: 2000 }), height: fc.integer({ min: 200, max: 1200 }) }),
  share: fc.record({ x: fc.double({ min: 0, max: 1, noNaN: true }), y: fc.double({ min: 0, max: 1, noNaN: true }) }),
  radius: fc.integer({ min: 3, max: 400 }),
})

test('stay in the window', () => {
  fc.assert(
    fc.property(situations, ({ window, share, radius }) => {
      const { x, y } = placeLabel({ x: share.x * window.width, y: share.y * window.height, radius }, label, window)
      expect(x).toBeGreaterThanOrEqual(0)
      expect(y).toBeGreaterThanOrEqual(0)
      expect(x + label.width).toBeLessThanOrEqual(window.width)
      expect(y + label.height).toBeLessThanOrEqual(window.height)
    }),
  )
})

test('leave the sample free wherever the window has room beside it', () => {
  fc.assert(
    fc.property(situations, ({ window, share, radius }) => {
      const ring = { x: share.x * window.width, y: share.y * window.height, radius }
      // With less than label, both gaps and margins on every side there is no free place.
      const reach = radius + 20
      const roomy =
        Math.max(ring.x, window.width - ring.x) >= reach + label.width ||
        Math.max(ring.y, window.height - ring.y) >= reach + label.height
      fc.pre(roomy)
      const { x, y } = placeLabel(ring, label, window)
      const nearestX = Math.min(Math.max(ring.x, x), x + label.width)
      const nearestY = Math.min(Math.max(ring.y, y), y + label.height)
      expect(Math.hypot(nearestX - ring.x, nearestY - ring.y)).toBeGreaterThan(radius)
    }),
  )
})
