// The infrared split against integrals of open spectra (sensitivities: ISETCam; light: ASTM G173-03; reflectances: USGS splib07).
import { expect, test } from 'vitest'
import { infraredShares } from '../../src/analysis/infrared-shares.ts'
import { openJson } from '../support/open-data.ts'
import { light, recording, reflectance, spectraAreHere, times, type Rgb } from '../simulation/camera.ts'

const sun = spectraAreHere ? light('sun_sky_global_AM15') : []
/** The part of a spectrum from 780 nm on; spectra begin at 350 nm and go on in steps of 5. */
const infraredOf = (spectrum: readonly number[]) => spectrum.map((value, i) => (350 + 5 * i >= 780 ? value : 0))
const ratios = ([r, g, b]: Rgb): [number, number] => [Math.log2(r / g), Math.log2(b / g)]

test.skipIf(!spectraAreHere).each(['A', 'B'] as const)(
  'sensor %s at 590 nm: the infrared share of a grey within 10 % of the spectra (skipped without open data)',
  (sensor) => {
    const record = recording(sensor, 590)
    const [grey, infrared] = [record(sun), record(infraredOf(sun))]
    // The opening neutral of a frame half of foliage must not matter.
    const leaf = record(times(sun, reflectance('leaf_deciduous_b')))
    const mean = grey.map((level, c) => 0.2 * level + 0.8 * leaf[c]) as unknown as Rgb
    for (const reference of [grey, mean]) {
      const { red, green } = infraredShares(590, ratios(grey), ratios(reference))!
      const found = [red * (reference[0] / reference[2]) * grey[2], green * (reference[1] / reference[2]) * grey[2]]
      expect(Math.abs(found[0] / infrared[0] - 1)).toBeLessThan(0.1)
      expect(Math.abs(found[1] / infrared[1] - 1)).toBeLessThan(0.1)
    }
  },
)

const published = openJson<Record<string, Record<string, Record<string, number>>>>(
  'checks/nir_unmixing_coefficients.json',
)

test.skipIf(!published || !spectraAreHere)(
  'the shares of the published table at every filter within 10 % (skipped without open data)',
  () => {
    for (const [camera, sensor] of [
      ['camA', 'A'],
      ['camB', 'B'],
    ] as const) {
      for (const filterNm of [550, 590, 630, 665, 695, 720] as const) {
        const grey = ratios(recording(sensor, filterNm)(sun))
        const { red, green } = infraredShares(filterNm, grey, grey)!
        const row = published![camera][filterNm]
        expect(Math.abs(red / row.R_share_above_780nm - 1)).toBeLessThan(0.1)
        expect(Math.abs(green / row.G_share_above_780nm - 1)).toBeLessThan(0.1)
      }
    }
  },
)

test('beyond the last filter with visible light there is nothing to split', () => {
  expect(infraredShares(850, [0.2, 0.1], [0.2, 0.1])).toBeNull()
})
