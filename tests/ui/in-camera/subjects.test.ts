// Distances from grey against the table of computed sensor ratios from open spectra (skipped without it), and what follows in words.
import { describe, expect, it, test } from 'vitest'
import { whatToFrame, whenAgain } from '../../../src/ui/in-camera/advice.ts'
import { atCutOn, computedNm, greySunToShade, subjects } from '../../../src/ui/in-camera/subjects.ts'
import { openCsv } from '../../support/open-data.ts'

const materials: Record<string, readonly string[]> = {
  'Cloud, far from the sun': ['cloud_sunlit'],
  Concrete: ['concrete_road'],
  'White cloth': ['cotton_white'],
  'White paint': ['siding_white_vinyl'],
  Brick: ['brick_red_a', 'brick_red_b', 'brick_grey'],
  'Melting snow': ['snow_melting'],
  'Pale stone': ['limestone'],
  'Old asphalt': ['asphalt_old'],
  'Dry grass': ['grass_dry_b'],
  'Bare timber': ['wood_pine_new', 'plywood'],
  Sand: ['sand_dry_a', 'sand_dry_b', 'sand_wet'],
  'White water': ['foam_surf'],
  Conifers: ['conifer_b', 'conifer_c'],
  'Broadleaf trees': ['leaf_deciduous_b', 'leaf_deciduous_c'],
  'Green grass': ['grass_green_b'],
}

const triplets = openCsv('checks/triplets.csv')
/** Ratios in stops of a material in a light behind a filter, one for each sensor. */
function ratios(material: string, light: string, filterNm: number): [number, number][] {
  return triplets!
    .filter((row) => row.material === material && row.illuminant === light && row.filter === String(filterNm))
    .sort((a, b) => a.camera.localeCompare(b.camera))
    .map((row) => [Number(row.log2_RG), Number(row.log2_BG)])
}
const apart = (a: [number, number][], b: [number, number][]) =>
  a.map(([u, v], i) => Math.hypot(u - b[i][0], v - b[i][1]))

describe.skipIf(!triplets)('computed from open spectra (skipped without them)', () => {
  const sun = 'sun_sky_global_AM15'
  it.each(subjects)('$name', ({ name, stops }) => {
    computedNm.forEach((filterNm, i) => {
      const grey = ratios('grey_card_ideal', sun, filterNm)
      const distances = materials[name].flatMap((material) => apart(ratios(material, sun, filterNm), grey))
      expect(distances.length).toBeGreaterThanOrEqual(2)
      expect(stops[i]).toBeCloseTo(distances.reduce((a, b) => a + b) / distances.length, 1.9)
    })
  })

  test('a grey from sun to open shade', () => {
    computedNm.forEach((filterNm, i) => {
      const [sunlit, shaded] = [sun, 'sky_diffuse_clear'].map((light) => ratios('grey_card_ideal', light, filterNm))
      expect(greySunToShade[i]).toBeCloseTo(Math.max(...apart(sunlit, shaded)), 1.9)
    })
  })
})

test('between computed cut-ons the number lies straight between, beyond them it stays', () => {
  expect(atCutOn(greySunToShade, 610)).toBeCloseTo(0.39, 9)
  expect(atCutOn(greySunToShade, 590)).toBeCloseTo(0.44, 9)
  expect(atCutOn(greySunToShade, 400)).toBe(0.71)
  expect(atCutOn(greySunToShade, 740)).toBe(0.16)
})

test('advice names stone for short filters, foliage near 720 nm, no grass under cloud, and says when nothing matters', () => {
  expect(whatToFrame(590, 'sun')).toMatch(/^Concrete/)
  expect(whatToFrame(720, 'sun')).toMatch(/^Grass or leaves/)
  expect(whatToFrame(720, 'overcast')).toMatch(/^Something near to white/)
  expect(whatToFrame(850, 'shade')).toMatch(/black and white/)
  expect(whatToFrame(null, 'sun')).toMatch(/green and magenta/)
  expect(whenAgain(665, 'sun')).toContain('0.25 stop')
  expect(whenAgain(850, 'sun')).toBe('One setting serves for the day.')
})
