// Woodland and courtyard: the same pixels whichever bands they are painted in, nothing that is no light, and the sunlit and
// shaded twins that the courtyard exists for. Shadow edges are held to plane trigonometry and to the sun's apparent size.
import { describe, expect, it } from 'vitest'
import { materialNames } from '../../demo-data/light/materials.ts'
import { createPalette } from '../../demo-data/light/triplets.ts'
import { sunDirection } from '../../demo-data/paint/camera.ts'
import { type Band, createBand } from '../../demo-data/paint/canvas.ts'
import { createFace } from '../../demo-data/paint/face.ts'
import type { Scene } from '../../demo-data/paint/scene.ts'
import { createFaceSun, sunPast } from '../../demo-data/paint/sun-casters.ts'
import { frameSize } from '../../demo-data/frame-size.ts'
import { courtyard } from '../../demo-data/scenes/courtyard.ts'
import { woodland } from '../../demo-data/scenes/woodland.ts'

function paintWhole(scene: Scene, sensor: 'A' | 'B', filter: '590' | '720'): { whole: Band; parts: Band[] } {
  const size = frameSize(0.06, scene.aspect)
  const painter = scene.prepare(size, createPalette(sensor, filter), 5)
  const whole = createBand(size.width, size.height, 0, size.height)
  painter.paint(whole)
  const cut = Math.round(size.height * 0.37)
  const parts = [createBand(size.width, size.height, cut, size.height), createBand(size.width, size.height, 0, cut)]
  for (const part of parts) painter.paint(part)
  return { whole, parts }
}

describe.each([
  ['woodland', woodland, 'B', '720'],
  ['courtyard', courtyard, 'A', '590'],
] as const)('the %s', (_name, scene, sensor, filter) => {
  const { whole, parts } = paintWhole(scene, sensor, filter)

  it('comes out alike in one band and in two', () => {
    for (const part of parts) {
      const from = part.y0 * part.width
      const to = part.y1 * part.width
      expect(part.r).toEqual(whole.r.slice(from, to))
      expect(part.b).toEqual(whole.b.slice(from, to))
      expect(part.material).toEqual(whole.material.slice(from, to))
    }
  })

  it('holds light and nothing else', () => {
    const wrong = [whole.r, whole.g, whole.b].flatMap((plane) => [...plane].filter((v) => !(v >= 0 && v < 4)))
    expect(wrong).toEqual([])
  })
})

it('the courtyard shows plaster and paving in sun and in open shade', () => {
  const { whole } = paintWhole(courtyard, 'A', '590')
  for (const twins of [['plaster'], ['limestone', 'concrete']] as const) {
    const ids: number[] = twins.map((twin) => materialNames.indexOf(twin))
    const on = [...whole.sun].filter((_, i) => ids.includes(whole.material[i]))
    const share = (test: (sun: number) => boolean) => on.filter(test).length / whole.sun.length
    expect(share((sun) => sun > 90)).toBeGreaterThan(0.02)
    expect(share((sun) => sun === 0)).toBeGreaterThan(0.02)
  }
})

describe('shadows of flat things', () => {
  const sun = sunDirection(-90, 35)
  const wallM = 2.4
  const wall = createFace([0, 0, -50], [0, 0, 1], [0, 1, 0], 100, wallM)
  const floor = createFace([0, 0, -20], [1, 0, 0], [0, 0, 1], 12, 40)
  const edge = wallM / Math.tan((35 * Math.PI) / 180)

  it('end where height over the tangent of the elevation puts them', () => {
    expect(sunPast([wall], sun, edge - 0.1, 0, 0)).toBe(0)
    expect(sunPast([wall], sun, edge, 0, 0)).toBeCloseTo(0.5, 2)
    expect(sunPast([wall], sun, edge + 0.1, 0, 0)).toBe(1)
  })

  // .533° is the sun's mean apparent diameter (almanac value, from memory).
  it('have a half-shadow as wide as the sun is large', () => {
    const elevation = (35 * Math.PI) / 180
    const half = ((0.533 / 2) * Math.PI) / 180
    const begins = wallM / Math.tan(elevation + half)
    const ends = wallM / Math.tan(elevation - half)
    const lit = (x: number) => sunPast([wall], sun, x, 0, 0)
    expect(lit(begins - 0.006)).toBeLessThan(0.02)
    expect(lit(begins + 0.012)).toBeGreaterThan(0.02)
    expect(lit(ends - 0.012)).toBeLessThan(0.98)
    expect(lit(ends + 0.006)).toBeGreaterThan(0.98)
  })

  it('are the same when a face has sorted out what can shade it', () => {
    const sorted = createFaceSun(floor, [wall], sun)
    for (let x = 0.05; x < 12; x += 0.0137) expect(sorted(x, 20, x, 0, 0)).toBe(sunPast([wall], sun, x, 0, 0))
  })
})
