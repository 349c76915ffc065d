// Geometry of the neutral plane: there and back, fitting, zooming about a point, and a grid whose numbers stay apart.
import { describe, expect, it } from 'vitest'
import {
  fittedView,
  gainsAt,
  gridStep,
  gridValues,
  pannedView,
  pointOf,
  zoomedView,
} from '../../../src/ui/neutral-plane/plane-view.ts'

const size = { width: 240, height: 200 }
const view = { centre: { redStops: -1.5, blueStops: 0.8 }, stopsPerPx: 0.01 }
const close = (value: number) => expect.closeTo(value, 9)

describe('places', () => {
  it('lie right of the middle for more red and above it for more blue, and lead back to their gains', () => {
    expect(pointOf(view, size, { redStops: -1, blueStops: 1 })).toEqual({ x: close(170), y: close(80) })
    expect(gainsAt(view, size, 170, 80)).toEqual({ redStops: close(-1), blueStops: close(1) })
  })

  it('move with the hand', () => {
    const before = pointOf(view, size, { redStops: 2, blueStops: -3 })
    const after = pointOf(pannedView(view, 13, -7), size, { redStops: 2, blueStops: -3 })
    expect(after).toEqual({ x: close(before.x + 13), y: close(before.y - 7) })
  })
})

describe('fitting', () => {
  it('shows every point with room around it', () => {
    const points = [
      { redStops: -12, blueStops: 3 },
      { redStops: 4, blueStops: 15 },
      { redStops: 0, blueStops: 0 },
    ]
    const fitted = fittedView(points, size)
    for (const gains of points) {
      const { x, y } = pointOf(fitted, size, gains)
      expect(Math.min(x, y, size.width - x, size.height - y)).toBeGreaterThan(20)
    }
  })

  it('gives a single point a useful surrounding, and nothing at all a plane about zero', () => {
    const { centre, stopsPerPx } = fittedView([view.centre], size)
    expect(centre).toEqual(view.centre)
    expect(stopsPerPx * size.width).toBeCloseTo(1, 9)
    expect(fittedView([], { width: 0, height: 0 }).centre).toEqual({ redStops: 0, blueStops: 0 })
  })
})

describe('zoom', () => {
  it('keeps what lies under the pointer', () => {
    const held = gainsAt(view, size, 30, 170)
    const zoomed = zoomedView(view, size, 30, 170, 3)
    expect(zoomed.stopsPerPx).toBeCloseTo(view.stopsPerPx / 3, 12)
    expect(pointOf(zoomed, size, held)).toEqual({ x: close(30), y: close(170) })
  })

  it('goes from a hundredth of a stop to a thousand stops', () => {
    const across = (factor: number) => zoomedView(view, size, 0, 0, factor).stopsPerPx * size.width
    expect(across(1e9)).toBeLessThan(0.011)
    expect(across(1e-9)).toBeGreaterThan(900)
  })
})

describe('grid', () => {
  it.each([1e-4, 0.003, 0.01, 0.04, 0.7, 3])(
    'at %f stop per pixel: 1, 2 or 5 of a power of ten, 44 px apart or more',
    (stopsPerPx) => {
      const step = gridStep({ ...view, stopsPerPx })
      expect(step / stopsPerPx).toBeGreaterThanOrEqual(44)
      expect(step / stopsPerPx).toBeLessThan(44 * 2.6)
      const mantissa = step / 10 ** Math.floor(Math.log10(step) + 1e-9)
      expect([1, 2, 5].some((each) => Math.abs(mantissa - each) < 1e-9)).toBe(true)
    },
  )

  it('draws the multiples within the window', () => {
    expect(gridValues(-1.2, 0.9, 0.5)).toEqual([-1, -0.5, 0, 0.5].map((value) => expect.closeTo(value, 12)))
    expect(gridValues(0.1, 0.2, 1)).toEqual([])
  })
})
