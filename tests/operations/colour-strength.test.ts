import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { colourStrength, strengthLimit } from '../../src/operations/colour-strength.ts'
import { initialValues } from '../../src/operations/values.ts'
import { applyOperation, plainFacts } from '../support/apply-operation.ts'
import { openCsv } from '../support/open-data.ts'

const oklch = (rgb: readonly number[]) =>
  new Color('rec2020-linear', [...rgb] as [number, number, number]).to('oklch').coords as number[]

test('scales chroma and leaves lightness and hue (OKLCh of colorjs.io), where noise is far below what is allowed', () => {
  const noise = { fullScaleElectrons: 1e12, readNoiseElectrons: 1 }
  for (const strengthStops of [-2, -0.5, 1, 3]) {
    const rgb = new Color('oklch', [0.7, 0.012, 230]).to('rec2020-linear').coords as number[]
    const [lightness, chroma, hue] = oklch(
      applyOperation(colourStrength, rgb, { strengthStops }, { facts: { ...plainFacts, noise } }),
    )
    expect(lightness).toBeCloseTo(0.7, 5)
    expect(chroma).toBeCloseTo(0.012 * 2 ** strengthStops, 4)
    expect(hue).toBeCloseTo(230, 1)
  }
})

const rows = openCsv('checks/chroma_signal_vs_noise.csv')

test.skipIf(!rows)('chroma noise of a sensor pixel is that of the noise table (skipped without open data)', () => {
  // The table’s pixels: 50,000 electrons at full scale, 3 of read noise, neutral gains that make the subject grey.
  for (const row of rows!.filter(({ filter }) => Number(filter) <= 720)) {
    const [red, green, blue] = ['R', 'G', 'B'].map((c) => Number(row[`${c}_of_fullscale`]))
    const facts = { ...plainFacts, noise: { fullScaleElectrons: 50_000, readNoiseElectrons: 3 } }
    const toHere = [green / red, 0, 0, 0, 1, 0, 0, 0, green / blue]
    const k = colourStrength.derive({ ...initialValues(colourStrength), noisePercent: 100 }, facts, toHere)
    const noise = 1 / strengthLimit(k, green)
    expect(noise / Number(row.noise_chroma_over_L_1sigma_per_pixel)).toBeGreaterThan(0.85)
    expect(noise / Number(row.noise_chroma_over_L_1sigma_per_pixel)).toBeLessThan(1.15)
  }
})

test('growth never lifts the noise of a level beyond what is allowed, and stays what was asked where there is room', () => {
  const k = colourStrength.derive({ strengthStops: 3, noisePercent: 2 }, plainFacts)
  for (const level of [0.5, 0.05, 0.005, 0.0005]) {
    const redder = level * 1.01
    const [, before] = oklch([redder, level, level])
    const [, after] = oklch(
      applyOperation(colourStrength, [redder, level, level], { strengthStops: 3, noisePercent: 2 }),
    )
    expect(after / before).toBeLessThanOrEqual(Math.max(strengthLimit(k, level), 1) * 1.01)
    expect(after / before).toBeGreaterThan(0.99)
  }
})
