// Camera triplets against an independent computation from the same open spectra, and against what infrared photographers know.
import { describe, expect, it, test } from 'vitest'
import type { MaterialName } from '../../demo-data/light/materials.ts'
import { createPalette } from '../../demo-data/light/triplets.ts'
import type { FilterName, SensorName } from '../../demo-data/spectra.ts'
import { openCsv } from '../support/open-data.ts'

const table = openCsv('checks/triplets.csv')
const firstOf = { sun_direct_AM15: 0, sky_diffuse_clear: 3, overcast_model: 6 } as const
const spectrumOf: Partial<Record<MaterialName, string>> = {
  grass: 'grass_green_b',
  leaf: 'leaf_deciduous_b',
  conifer: 'conifer_b',
  concrete: 'concrete_road',
  limestone: 'limestone',
  wood: 'wood_pine_new',
}

describe('camera triplets', () => {
  // Without a filter only rounding differs. With one, the table used measured glass and the roll uses fitted edges; the stated
  // effect of the fit is .018 stop in sunlight. Skylight puts more weight on the edge: .0213 was found, at 590 nm.
  it.skipIf(!table)(
    'agree with the separately computed table (skipped without the data)',
    () => {
      let compared = 0
      for (const row of table!) {
        const material = (Object.keys(spectrumOf) as MaterialName[]).find((m) => spectrumOf[m] === row.material)
        const first = firstOf[row.illuminant as keyof typeof firstOf]
        if (!material || first === undefined || !['none', '590', '665', '720', '850'].includes(row.filter)) continue
        const palette = createPalette(row.camera.slice(3) as SensorName, row.filter as FilterName)
        const t = palette.of(material).t
        const fit = row.illuminant === 'sky_diffuse_clear' ? 0.022 : 0.0185
        const allowance = row.filter === 'none' ? 0.002 : fit
        expect(Math.abs(Math.log2(t[first] / t[first + 1]) - Number(row.log2_RG))).toBeLessThan(allowance)
        expect(Math.abs(Math.log2(t[first + 2] / t[first + 1]) - Number(row.log2_BG))).toBeLessThan(allowance)
        compared++
      }
      expect(compared).toBeGreaterThan(100)
    },
    60_000,
  )

  test('white in sun and sky has 1 in its largest channel', () => {
    for (const filter of ['none', '590', '720'] as const) {
      const t = createPalette('A', filter).of('white').t
      const sunAndSky = [0, 1, 2].map((c) => t[c] + t[3 + c])
      expect(Math.max(...sunAndSky)).toBeGreaterThan(0.9)
      expect(Math.max(...sunAndSky)).toBeLessThan(1.1)
    }
  })

  // Wood 1910: foliage reflects several times more in the infrared than in red light; the clear sky gives far less there.
  test('foliage brightens and the sky darkens in infrared', () => {
    const visible = createPalette('B', 'none')
    const infrared = createPalette('B', '720')
    const green = (p: typeof visible, m: MaterialName, first: number) => p.of(m).t[first + 1] / p.of('white').t[1]
    expect(green(infrared, 'leaf', 0)).toBeGreaterThan(1.5 * green(visible, 'leaf', 0))
    expect(green(infrared, 'white', 3)).toBeLessThan(0.6 * green(visible, 'white', 3))
  })
})
