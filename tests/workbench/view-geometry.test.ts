// Geometry of the view; the expected values are worked by hand.
import { describe, expect, it } from 'vitest'

import { cssOf, effectiveZoom, layoutOf, placeAt, zoomedAbout } from '../../src/workbench/view-geometry.ts'

const frame = { width: 3000, height: 2000 }
const viewport = { width: 1048, height: 848, devicePixelRatio: 2 }
const fitted = { fit: true, zoom: 1, centre: { x: 0.5, y: 0.5 } }

describe('view geometry', () => {
  it('fits the frame with a margin of 24 CSS pixels', () => {
    expect(effectiveZoom(fitted, frame, viewport)).toBeCloseTo((1000 / 3000) * 2, 12)
    const { left, top, scale } = layoutOf(fitted, frame, viewport)
    expect([left, scale]).toEqual([24, 1 / 3])
    expect(top).toBe(90.5)
  })

  it('goes from place to screen and back', () => {
    const view = { fit: false, zoom: 1, centre: { x: 0.25, y: 0.75 } }
    const layout = layoutOf(view, frame, viewport)
    const css = cssOf(layout, frame, { x: 0.3, y: 0.7 })
    const place = placeAt(layout, frame, css.x, css.y)
    expect(place?.x).toBeCloseTo(0.3, 12)
    expect(place?.y).toBeCloseTo(0.7, 12)
    expect(placeAt(layout, frame, layout.left - 1, css.y)).toBeNull()
  })

  it('puts sensor pixels on whole device pixels at 1:1', () => {
    const { left, top } = layoutOf({ fit: false, zoom: 1, centre: { x: 0.333, y: 0.777 } }, frame, viewport)
    expect(Number.isInteger(left * 2) && Number.isInteger(top * 2)).toBe(true)
  })

  it('zooms about a place without moving it on the screen', () => {
    const place = { x: 0.4, y: 0.55 }
    const before = cssOf(layoutOf(fitted, frame, viewport), frame, place)
    const zoomed = zoomedAbout(fitted, frame, viewport, place, 2)
    const after = cssOf(layoutOf(zoomed, frame, viewport), frame, place)
    expect(Math.abs(after.x - before.x)).toBeLessThanOrEqual(1)
    expect(Math.abs(after.y - before.y)).toBeLessThanOrEqual(1)
    expect(zoomed.zoom).toBeCloseTo((2 * 2) / 3, 12)
  })

  it('stops at sixteen screen pixels per sensor pixel', () => {
    expect(zoomedAbout(fitted, frame, viewport, { x: 0.5, y: 0.5 }, 1e6).zoom).toBe(16)
  })
})
