// Interpolation kernels for any colour filter array: the value at the centre of a plane fitted by weighted least squares
// to the photosites of one colour around a pixel. The array repeats, so each phase has one fixed set of weights. A plane
// makes constants and linear ramps exact, which plain weighted means over uneven neighbours are not.
import type { Cfa, CfaColour } from '../frame/frame.ts'
import { invert, transform } from '../math/mat3.ts'

export interface Tap {
  readonly x: number
  readonly y: number
  readonly weight: number
}

/**
 * Weights that estimate `colour` at the photosite (`left`, `top`) of the array from those within `reach`, falling off as a
 * Gaussian of `sigma` photosites. Throws a RangeError where the array has no three such photosites off one line.
 */
export function planeKernel(
  cfa: Cfa,
  colour: CfaColour,
  left: number,
  top: number,
  reach: number,
  sigma: number,
): readonly Tap[] {
  const modulo = (value: number, period: number) => ((value % period) + period) % period
  const taps: Tap[] = []
  const normal = new Float64Array(9)
  for (let y = -reach; y <= reach; y++) {
    for (let x = -reach; x <= reach; x++) {
      if (cfa.colours[modulo(top + y, cfa.rows) * cfa.columns + modulo(left + x, cfa.columns)] !== colour) continue
      const weight = Math.exp(-(x * x + y * y) / (2 * sigma * sigma))
      taps.push({ x, y, weight })
      const terms = [1, x, y]
      for (let i = 0; i < 9; i++) normal[i] += weight * terms[Math.floor(i / 3)] * terms[i % 3]
    }
  }
  const [constant, slopeX, slopeY] = transform(invert([...normal]), [1, 0, 0])
  return taps.map(({ x, y, weight }) => ({ x, y, weight: weight * (constant + slopeX * x + slopeY * y) }))
}
