import { expect, test } from 'vitest'
import { suggestFilter } from '../../src/edits/suggest-filter.ts'
import type { Overview } from '../../src/frame/frame.ts'
import { openCsv } from '../support/open-data.ts'

const noise = { fullScaleElectrons: 50_000, readNoiseElectrons: 3 }
const triplets = openCsv('checks/triplets.csv')

/** Steps of an additive generator with the golden ratio: fixed, evenly spread numbers in 0…1. */
const spread = (i: number) => (i * 0.618033988749895) % 1
/** Fixed, nearly normal numbers: sums of twelve of them. */
const normals = Array.from({ length: 5003 }, (_, i) =>
  Array.from({ length: 12 }, (_, j) => spread(i * 12 + j * 7919)).reduce((a, b) => a + b, -6),
)

/** A scene of 8 × 8 flat patches of eight pixels, R, G and B relative to white, with photon and read noise. */
function scene(colours: readonly (readonly number[])[]): Overview {
  const width = 64
  const rgba = new Float32Array(width * width * 4)
  for (let y = 0; y < width; y++) {
    for (let x = 0; x < width; x++) {
      const i = (y * width + x) * 4
      const colour = colours[((y >> 3) * 8 + (x >> 3)) % colours.length]
      colour.forEach((mean, channel) => {
        const deviation = Math.sqrt(
          mean / noise.fullScaleElectrons + (noise.readNoiseElectrons / noise.fullScaleElectrons) ** 2,
        )
        rgba[i + channel] = mean + (deviation / 2) * normals[(i + channel) % normals.length]
      })
      rgba[i + 3] = Math.max(...colour)
    }
  }
  return { width, height: width, rgba, scale: 4 }
}

/** Share of simulated scenes for which a suggestion is made: per camera and light, foliage with six other materials. */
function suggestedShare(filter: string): number {
  const rows = triplets!.filter((row) => row.filter === filter)
  const lit = (row: Record<string, string>) => `${row.camera} ${row.illuminant}`
  const groups = [...new Set(rows.map(lit))].map((light) => rows.filter((row) => lit(row) === light))
  const found = groups.flatMap((group) =>
    [1, 2, 3, 4].map((draw) => {
      const foliage = group.filter((row) => ['grass', 'deciduous', 'conifer'].includes(row.class))
      const picked = [0, 1].map((i) => foliage[Math.floor(spread(draw * 5 + i) * foliage.length)])
      const others = [2, 3, 4, 5, 6, 7].map((i) => group[Math.floor(spread(draw * 11 + i) * group.length)])
      const colours = [...picked, ...others].map((row) =>
        [Number(row.R_over_G), 1, Number(row.B_over_G)].map((ratio) => (ratio * Number(row.G_rel_white)) / 2),
      )
      return suggestFilter(scene(colours), noise) !== null
    }),
  )
  return found.filter(Boolean).length / found.length
}

test.skipIf(!triplets)('scenes without colour are told from scenes with colour (skipped without open data)', () => {
  expect(suggestedShare('830')).toBeGreaterThanOrEqual(0.95)
  expect(suggestedShare('850')).toBeGreaterThanOrEqual(0.95)
  for (const filter of ['none', '550', '590', '630', '665', '695'])
    expect(suggestedShare(filter)).toBeLessThanOrEqual(0.02)
  expect(suggestedShare('720')).toBeLessThanOrEqual(0.05)
})

test('nothing is said about a frame that is dark or clipped all over', () => {
  expect(suggestFilter(scene([[0, 0, 0]]), noise)).toBeNull()
  expect(suggestFilter(scene([[1, 0.98, 0.97]]), noise)).toBeNull()
})

test('the suggestion says why and what it cannot know', () => {
  expect(suggestFilter(scene([[0.5, 0.45, 0.44]]), noise)).toMatchObject({
    filterNm: 830,
    reason: expect.stringMatching(/differ by only 0\.0\d stop.*single material/),
  })
})
