// Suggested neutrals on at least 200 fresh scenes per filter: targets of ours, held on draws that no constant was chosen on.
import { beforeAll, describe, expect, it, test } from 'vitest'
import { type FilterNm, filters, spectraAreHere } from './camera.ts'
import { firstFreshSeed, freshGeometries, summarise, type Trial, tryScenes } from './suggestion-trial.ts'

const trials: Trial[] = []
const of = (filterNm: FilterNm) => trials.filter((trial) => trial.filterNm === filterNm)

describe.skipIf(!spectraAreHere)('suggestions on fresh scenes (skipped without the spectra)', () => {
  beforeAll(() => {
    trials.push(...tryScenes(firstFreshSeed, freshGeometries))
  }, 900_000)

  it.each(filters)('%i nm: one of the first three is right where a neutral is there', (filterNm) => {
    const { scenes, top3 } = summarise(of(filterNm))
    expect(scenes).toBeGreaterThanOrEqual(200)
    expect(top3).toBeGreaterThanOrEqual(filterNm < 630 ? 0.85 : 0.9)
  })

  it.each(filters)('%i nm: the first is nearer to grey than grey world is', (filterNm) => {
    const { first, greyWorld } = summarise(of(filterNm))
    expect(first).toBeLessThanOrEqual(greyWorld)
  })

  const inOpenShade = (filterNm: FilterNm) => summarise(of(filterNm).filter(({ kind }) => kind === 'open shade'))

  it.each(filters)('%i nm, open shade: so it is there', (filterNm) => {
    const { soluble, first, greyWorld } = inOpenShade(filterNm)
    expect(soluble).toBeGreaterThan(15)
    expect(first).toBeLessThanOrEqual(greyWorld)
  })

  test('up to 695 nm colour is left in nearly every scene, at 850 nm in none', () => {
    const left = trials.filter(({ filterNm, colourLeft }) => filterNm <= 695 && colourLeft)
    expect(left.length / trials.filter(({ filterNm }) => filterNm <= 695).length).toBeGreaterThan(0.97)
    for (const { colourLeft } of tryScenes(firstFreshSeed, 6, [850])) expect(colourLeft).toBe(false)
  })
})
