// OKLab (Ottosson 2020, matrices as recalculated for CSS Color 4) reached from linear `workingRgb`.
// Between the two stand cone responses `lms` and their cube roots, in which lines of one hue are straight: steps work there.
import { invert, multiply, transform } from '../math/mat3.ts'
import { workingToXyz } from './working-space.ts'

/** XYZ (D65) to lms, CSS Color 4 sample code. */
const XYZ_TO_LMS = [
  0.819022437996703, 0.3619062600528904, -0.1288737815209879, 0.0329836539323885, 0.9292868615863434,
  0.0361446663506424, 0.0481771893596242, 0.2642395317527308, 0.6335478284694309,
]

/** Cube roots of lms to OKLab (L, a, b), CSS Color 4 sample code. */
export const rootsToOklab: readonly number[] = [
  0.210454268309314, 0.7936177747023054, -0.0040720430116193, 1.9779985324311684, -2.4285922420485799,
  0.450593709617411, 0.0259040424655478, 0.7827717124575296, -0.8086757549230774,
]
export const oklabToRoots: readonly number[] = invert(rootsToOklab)

export const workingToLms: readonly number[] = multiply(XYZ_TO_LMS, workingToXyz)
export const lmsToWorking: readonly number[] = invert(workingToLms)

/** OKLab (L, a, b) of linear `workingRgb`; unbounded, cube roots keep the sign. */
export function workingToOklab(rgb: readonly number[]): [number, number, number] {
  const [l, m, s] = transform(workingToLms, rgb)
  return transform(rootsToOklab, [Math.cbrt(l), Math.cbrt(m), Math.cbrt(s)])
}

/** Linear `workingRgb` of OKLab (L, a, b); the inverse of `workingToOklab`. */
export function oklabToWorking(lab: readonly number[]): [number, number, number] {
  const [l, m, s] = transform(oklabToRoots, lab)
  return transform(lmsToWorking, [l ** 3, m ** 3, s ** 3])
}

/** OKLCh: lightness, chroma and hue in degrees 0…360. Where C/L < .005 the hue means nothing. */
export function oklabToOklch([lightness, a, b]: readonly number[]): [number, number, number] {
  const hueDeg = (Math.atan2(b, a) * 180) / Math.PI
  return [lightness, Math.hypot(a, b), hueDeg < 0 ? hueDeg + 360 : hueDeg]
}
