import Color from 'colorjs.io'
import { expect, test } from 'vitest'
import { workingToLab } from '../../src/colour/cielab.ts'
import { evenPlaces } from '../support/sample-places.ts'

test('equals colorjs.io under D65, negative and bright colours included', () => {
  for (const rgb of evenPlaces(200, -0.1, 1.6)) {
    const wanted = new Color('rec2020-linear', rgb as [number, number, number]).to('lab-d65').coords
    workingToLab(rgb).forEach((value, i) => expect(Math.abs(value - wanted[i]!)).toBeLessThan(0.01))
  }
})
