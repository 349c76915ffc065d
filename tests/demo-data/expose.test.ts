// The sensor model against the Poisson-Gaussian law of photon and read noise: variance = y ÷ F + (r ÷ F)² for a normalised
// signal y, F electrons at saturation and r electrons of read noise (Foi et al., IEEE TIP 17, 2008).
import { describe, expect, test } from 'vitest'
import { createBand } from '../../demo-data/paint/canvas.ts'
import { bodies } from '../../demo-data/sensor/body.ts'
import { exposeBand, type Exposure, fullScaleElectrons } from '../../demo-data/sensor/expose.ts'

const size = { width: 512, height: 256 }
const exposure: Exposure = { phase: 'GRBG', black: [512, 514, 511, 513], orientation: 1, iso: 400, exposureEv: 0 }
const body = bodies.A

/** Codes of a field whose light grows no further than the lens falloff undoes: the middle 64 × 64 pixels are used. */
function expose(level: number, y0 = 0, y1 = size.height, seed = 5): Uint16Array {
  const band = createBand(size.width, size.height, y0, y1)
  for (const plane of [band.r, band.g, band.b]) plane.fill(level)
  return exposeBand(band, size, body, exposure, seed)
}

function middle(codes: Uint16Array): number[] {
  const values: number[] = []
  for (let y = 64; y < 192; y++) {
    for (let x = 192; x < 320; x++) {
      const black = exposure.black[(y & 1) * 2 + (x & 1)]
      values.push((codes[y * size.width + x] - black) / (body.white - black))
    }
  }
  return values
}

const mean = (v: readonly number[]) => v.reduce((s, x) => s + x, 0) / v.length
function variance(v: readonly number[]): number {
  const centre = mean(v)
  return mean(v.map((x) => (x - centre) ** 2))
}

describe('exposure', () => {
  for (const level of [0, 0.01, 0.1, 0.5]) {
    test(`noise at ${level} of saturation follows the law of photon and read noise`, () => {
      const full = fullScaleElectrons(body, exposure)
      const seen = middle(expose(level))
      const quantisation = 1 / 12 / (body.white - 512) ** 2
      const expected = level / full + (body.readNoiseElectrons / full) ** 2 + quantisation
      const falloffAllowance = 0.02
      // 16384 samples: the standard error of a variance is √(2/n) ≈ 1.1 %; four of them are allowed.
      expect(Math.abs(variance(seen) / expected - 1)).toBeLessThan(0.044 + falloffAllowance)
      expect(mean(seen)).toBeGreaterThan(level * (1 - falloffAllowance) - 2e-5)
      expect(mean(seen)).toBeLessThan(level + 4 * Math.sqrt(expected / 16384))
    })
  }

  test('the same seed gives the same codes, another seed others, and strips equal the whole', () => {
    const whole = expose(0.2)
    expect(expose(0.2)).toEqual(whole)
    expect(expose(0.2, 0, size.height, 6)).not.toEqual(whole)
    expect(expose(0.2, 100, 140)).toEqual(whole.slice(100 * size.width, 140 * size.width))
  })

  test('light beyond saturation gives the white code and nothing above', () => {
    expect(new Set(middle(expose(3)))).toEqual(new Set([1]))
  })
})
