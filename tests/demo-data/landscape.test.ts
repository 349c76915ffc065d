// What landscapes promise: bands agree, crests are where the height is greatest, shadows are as long as trigonometry says.
import { expect, it } from 'vitest'
import { createBand } from '../../demo-data/paint/canvas.ts'
import { createCamera, rowOf, sunDirection } from '../../demo-data/paint/camera.ts'
import { duneCeiling, duneHeight } from '../../demo-data/paint/dune-field.ts'
import { createTracer } from '../../demo-data/paint/height-field.ts'
import { createSunShadow } from '../../demo-data/paint/sun-shadow.ts'
import { createPalette } from '../../demo-data/light/triplets.ts'
import { frameSize } from '../../demo-data/frame-size.ts'
import { coast } from '../../demo-data/scenes/coast.ts'
import { dunes as duneScene } from '../../demo-data/scenes/dunes.ts'
import { lake } from '../../demo-data/scenes/lake.ts'

const size = { width: 240, height: 160 }
const camera = createCamera(size, { focalWidths: 0.8, horizon: 0.42, eyeM: duneHeight(0, 0, 0) + 1.7 })
const dunes = { height: duneHeight, ceiling: duneCeiling }
const reach = { nearM: 1.2, farM: 4000, step: 0.004 }

it('traces the same rows in one band and in many', () => {
  const tracer = createTracer(size, camera, dunes, reach)
  const whole = tracer.trace(createBand(size.width, size.height, 0, size.height))
  for (let y0 = 0; y0 < size.height; y0 += 20) {
    const part = tracer.trace(createBand(size.width, size.height, y0, y0 + 20))
    const rows = [y0 * size.width, (y0 + 20) * size.width] as const
    expect(part.near).toEqual(whole.near.slice(...rows))
    expect(part.covered).toEqual(whole.covered.slice(...rows))
  }
})

it('finds skylines to a quarter of a pixel, as a search ten times finer does', () => {
  const sight = createTracer(size, camera, dunes, reach).trace(createBand(size.width, size.height, 0, size.height))
  for (let x = 7; x < size.width; x += 31) {
    const across = (x + 0.5 - camera.centreX) / camera.focalPx
    let skyline = Infinity
    for (let z = 1.2; z < 4000; z *= 1.0001)
      skyline = Math.min(skyline, rowOf(camera, duneHeight(across * z, z, z / camera.focalPx), z))
    let y = 0
    while (sight.covered[y * size.width + x] === 0) y++
    expect(Math.abs(y + 1 - sight.covered[y * size.width + x] - skyline)).toBeLessThan(0.25)
  }
})

it('throws a shadow as long as height ÷ tan(elevation)', () => {
  const elevationDeg = 20
  const wall = (x: number) => (Math.abs(x) < 0.1 ? 2 : 0)
  const shadow = createSunShadow(wall, {
    sun: sunDirection(-90, elevationDeg),
    reach: 1,
    reliefM: 2,
    levels: [{ fromM: 1, toM: 20, cellM: 0.05 }],
  })
  const end = 0.1 + 2 / Math.tan((elevationDeg * Math.PI) / 180)
  expect(shadow.share(end - 0.3, 0, 10)).toBe(0)
  expect(shadow.share(end + 0.3, 0, 10)).toBe(1)
  expect(shadow.share(-1, 0, 10)).toBe(1)
})

it.each([
  ['lake', lake, 'A', '590'],
  ['dunes', duneScene, 'A', '850'],
  ['coast', coast, 'B', '590'],
] as const)(
  'paints the %s alike in one band and in many',
  (_name, scene, sensor, filter) => {
    const { width, height } = frameSize(0.07, scene.aspect)
    const painter = scene.prepare({ width, height }, createPalette(sensor, filter), 5)
    const whole = createBand(width, height, 0, height)
    painter.paint(whole)
    for (let y0 = 0; y0 < height; y0 += 36) {
      const part = createBand(width, height, y0, Math.min(height, y0 + 36))
      painter.paint(part)
      const rows = [y0 * width, part.y1 * width] as const
      expect(part.r).toEqual(whole.r.slice(...rows))
      expect(part.b).toEqual(whole.b.slice(...rows))
      expect(part.material).toEqual(whole.material.slice(...rows))
      expect([...part.g].every((v) => v >= 0 && v < 9)).toBe(true)
    }
  },
  120_000,
)
