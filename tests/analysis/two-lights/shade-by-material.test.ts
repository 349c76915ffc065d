// Cells of materials painted for the purpose: what is checked follows from light adding up, reckoned here on its own.
import { describe, expect, it } from 'vitest'
import type { LightMark } from '../../../src/analysis/two-lights/light-marks.ts'
import { findMaterials } from '../../../src/analysis/two-lights/shade-by-material.ts'

const sun: LightMark = [1.91, -1.04, -1]
const shade: LightMark = [2.17, -1.42, -1 + Math.log2(0.1)]
const direction = [0.26, -0.38].map((step) => step / Math.hypot(0.26, 0.38))

/** Level and colour along the lights of grey under a share of sun, from linear red, green and blue of both marks. */
function greyUnder(share: number): { level: number; along: number } {
  const mixed = [1, 2 ** -1.91, 2 ** (-1.91 - 1.04)].map(
    (inSun, c) => share * inSun + (1 - share) * [0.1, 0.1 / 2 ** 2.17, 0.1 * 2 ** (-2.17 - 1.42)][c],
  )
  const [u, v] = [Math.log2(mixed[0] / mixed[1]) - 1.91, Math.log2(mixed[2] / mixed[1]) + 1.04]
  return { level: Math.log2(mixed[0]), along: u * direction[0] + v * direction[1] }
}

/** Half of `count` cells in sun and half in shade, told apart surely, and `more` of which nothing is known. */
function cellsWith(more: readonly { level: number; along: number }[], count = 2000) {
  const known = Array.from({ length: count }, (_, i) => ({ ...greyUnder(i % 2), first: 1 - (i % 2) }))
  const all = [...known, ...more.map((cell) => ({ ...cell, first: 0.5 }))]
  const plane = (of: (cell: (typeof all)[number]) => number) => Float32Array.from(all, of)
  return { level: plane((c) => c.level), along: plane((c) => c.along), first: plane((c) => c.first) }
}

describe('shade by material', () => {
  it.each([0, 0.05, 0.2, 0.5, 1])('finds the colour of grey under %f of the sun', (share) => {
    const cell = greyUnder(share)
    const found = findMaterials(cellsWith([cell]), sun, shade)
      .ways()
      .at(-1)!
    expect(Math.abs(found - cell.along / Math.hypot(0.26, 0.38))).toBeLessThan(0.1)
  })

  it('leaves the first estimate where no material leads to', () => {
    const found = findMaterials(cellsWith([{ level: 3, along: -2 }], 100_000), sun, shade)
      .ways()
      .at(-1)!
    expect(found).toBeCloseTo(0.5, 1)
  })

  it('leaves it where the light is lost', () => {
    const found = findMaterials(cellsWith([{ level: -7, along: Number.NaN }]), sun, shade)
      .ways()
      .at(-1)!
    expect(found).toBeCloseTo(0.5, 6)
  })

  it('agrees more with an estimate that takes what is seen twice for one material in two lights', () => {
    const twice = cellsWith([])
    const asTwo = { ...twice, first: twice.first.map(() => 0) }
    const agreementWith = (cells: typeof twice) => findMaterials(cells, sun, shade).agreement
    expect(agreementWith(twice)).toBeGreaterThan(agreementWith(asTwo) + 0.1)
  })
})
