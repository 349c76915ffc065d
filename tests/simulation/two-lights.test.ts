// Two lights at 590 nm on fresh scenes, for materials that stand in both lights; constants were chosen on other scenes.
import { describe, expect, it, test } from 'vitest'
import { spectraAreHere } from './camera.ts'
import { height, width } from './scene.ts'
import { bandsUnderTwoLights, firstFreshSeed, mean, shareBelow, tryTwoLights } from './two-lights-trial.ts'

/** Trials of a sensor, made at the first call. */
function tryOnce(sensor: 'A' | 'B') {
  let made: ReturnType<typeof tryTwoLights> | undefined
  return () => (made ??= tryTwoLights(firstFreshSeed, 20, sensor, 590))
}

describe.skipIf(!spectraAreHere)('two lights on fresh scenes (skipped without the spectra)', () => {
  const trials = { A: tryOnce('A'), B: tryOnce('B') }
  const penumbraTargetStops = 0.03

  it.each(['A', 'B'] as const)(
    'sensor %s: grey is neutral in sun and in shade',
    (sensor) => {
      const { greySun, greyShade, penumbra } = trials[sensor]()
      const grey = [...greySun, ...greyShade]
      expect(grey.length).toBeGreaterThan(10_000)
      expect(penumbra.length).toBeGreaterThan(1000)
      expect(mean(grey)).toBeLessThanOrEqual(0.02)
      expect(shareBelow(grey, 0.03)).toBeGreaterThanOrEqual(0.88)
    },
    600_000,
  )

  test.each(['A', 'B'] as const)(
    'sensor %s: the penumbra reaches its target',
    (sensor) => {
      expect(mean(trials[sensor]().penumbra)).toBeLessThanOrEqual(penumbraTargetStops)
    },
    600_000,
  )

  test('a hard edge leaves no halo beyond ten cells', () => {
    const { mask, distance } = bandsUnderTwoLights('A', 590)
    // The middle of the concrete band, away from the other materials.
    const row = Math.floor(height / 8) * width
    for (let x = 0; x < width; x++) {
      const fromEdge = Math.abs(x - width / 2)
      if (fromEdge <= 10) continue
      const wanted = x < width / 2 ? 0 : 1
      expect(Math.abs(mask.plane[row + x] - wanted) * distance).toBeLessThanOrEqual(0.01)
    }
  })
})
