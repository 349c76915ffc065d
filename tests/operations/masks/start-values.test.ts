import { expect, test } from 'vitest'
import { startValues, tellsMaterials } from '../../../src/operations/masks/start-values.ts'

// Foliage against concrete behind 590, 665, 720 and 850 nm: .75, .37, .09 and 0 stop (computed from open spectra).
test('borders follow how far a filter leaves materials apart', () => {
  const border = (nm: number | null | undefined) => startValues('foliage', nm).borderStops as number
  expect(border(590)).toBe(-0.5)
  expect(border(665)).toBeCloseTo((-0.5 * 0.37) / 0.75, 2)
  expect(border(720)).toBeCloseTo((-0.5 * 0.09) / 0.75, 2)
  expect([border(null), border(undefined), border(550)]).toEqual([-0.5, -0.5, -0.5])
  expect(startValues('sky', 665).borderStops).toBeGreaterThan(0)
  expect([590, 720, 780, 850, null].map(tellsMaterials)).toEqual([true, true, false, false, true])
  expect(startValues('level', 665)).toEqual(startValues('level', 590))
})
