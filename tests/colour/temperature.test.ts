// Colour temperature against values of a general colour library (Ohno's method over a table of 1 % steps) and the CIE's
// published chromaticities of black bodies and daylight.
import { describe, expect, it, test } from 'vitest'
import { planckianChromaticity, planckianUv, uvToXy, xyToUv } from '../../src/colour/planckian-locus.ts'
import { type Temperature, temperatureDomain, temperatureOf } from '../../src/colour/temperature.ts'
import type { Chromaticity } from '../../src/colour/primaries.ts'
import { openJson } from '../support/open-data.ts'

/** (x, y) at a temperature and a distance square to the locus, whose direction is taken over a hundred-thousandth on both sides. */
function chromaticityOf({ kelvin, duv }: Temperature): [x: number, y: number] {
  const [u, v] = planckianUv(kelvin)
  const [cold, hot] = [planckianUv(kelvin * (1 - 1e-5)), planckianUv(kelvin * (1 + 1e-5))]
  const [du, dv] = [hot[0] - cold[0], hot[1] - cold[1]]
  const length = Math.hypot(du, dv)
  return uvToXy([u + (duv * dv) / length, v - (duv * du) / length])
}

const within = (xy: Chromaticity) => temperatureOf(xy) as Temperature

interface CheckValues {
  readonly ohno2013: readonly { name: string; x: number; y: number; CCT: number; Duv: number }[]
  readonly 'ohno_uv(0.1978,0.3122)': readonly [number, number]
  readonly planck_xy_cmf: Readonly<Record<string, readonly [number, number]>>
}

const checks = openJson<CheckValues>('checks/check_values.json')

describe.skipIf(!checks)('against published check values (skipped without them)', () => {
  test('temperature within 1 K and Duv within .0001', () => {
    for (const { x, y, CCT, Duv } of checks!.ohno2013) {
      const found = within([x, y])
      expect(Math.abs(found.kelvin - CCT)).toBeLessThan(1)
      expect(Math.abs(found.duv - Duv)).toBeLessThan(1e-4)
    }
    const [kelvin, duv] = checks!['ohno_uv(0.1978,0.3122)']
    const found = within(uvToXy([0.1978, 0.3122]))
    expect(Math.abs(found.kelvin - kelvin)).toBeLessThan(1)
    expect(Math.abs(found.duv - duv)).toBeLessThan(1e-5)
  })

  test('black bodies lie where the observer sees them', () => {
    for (const [kelvin, [x, y]] of Object.entries(checks!.planck_xy_cmf)) {
      const [ours, oursY] = planckianChromaticity(Number(kelvin))
      expect(Math.hypot(ours - x, oursY - y)).toBeLessThan(3e-5)
    }
  })
})

// CIE 15:2004, illuminant A: x .44758, y .40745, 2856 K (from memory).
test('illuminant A is 2856 K', () => {
  expect(within([0.44758, 0.40745]).kelvin).toBeCloseTo(2856, -0.5)
})

describe('there and back', () => {
  it.each([1001, 1100, 1800, 2856, 4000, 6504, 12_000, 16_000, 19_000, 19_950])('%i K', (kelvin) => {
    for (const duv of [-0.045, -0.01, -0.0019, 0, 0.0021, 0.003, 0.02, 0.045]) {
      const found = within(chromaticityOf({ kelvin, duv }))
      // Well within the 1 K that Ohno 2014 states for his own way.
      expect(Math.abs(found.kelvin - kelvin)).toBeLessThan(0.1)
      expect(found.duv).toBeCloseTo(duv, 6)
    }
  })

  test('(x, y) and (u, v)', () => {
    const [x, y] = uvToXy(xyToUv([0.31271, 0.32902]))
    expect([x, y]).toEqual([expect.closeTo(0.31271, 12), expect.closeTo(0.32902, 12)])
  })
})

test('beyond the domain there is no temperature, and it says on which side', () => {
  // Beside a black body of some 700 K.
  expect(temperatureOf([0.7, 0.28])).toBe('too cold')
  expect(temperatureOf([0.55, 0.2])).toBe('off the line')
  expect(temperatureOf(chromaticityOf({ kelvin: 900, duv: 0 }))).toBe('too cold')
  expect(temperatureOf([0.2, 0.5])).toBe('off the line')
  expect(temperatureOf([0.24, 0.235])).toBe('too hot')
  expect(temperatureOf([NaN, 0.3])).toBe('off the line')
  expect(temperatureOf(chromaticityOf({ kelvin: 3000, duv: temperatureDomain.duv * 1.05 }))).toBe('off the line')
})
