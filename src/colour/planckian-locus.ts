// Where black bodies lie: chromaticities of Planck's law seen by the CIE 1931 observer, 360–780 nm in steps of 5 nm, in
// CIE 1931 (x, y) and CIE 1960 (u, v). In (u, v) the nearest point of this line defines correlated colour temperature.
import type { Chromaticity } from './primaries.ts'

/** Second radiation constant in m·K (CODATA 2018). */
const secondRadiationConstant = 1.438776877e-2
const startNm = 360
const stepNm = 5

/** Colour-matching functions of the CIE 1931 standard observer (CIE 15:2004 table T.4; numbers from public copies of it), in millionths: x, y, z. */
// prettier-ignore
const observer: readonly number[] = [
  129.9, 3.917, 606, 232, 6.965, 1086, 415, 12.39, 1946, 742, 22.02, 3486,
  1368, 39, 6450, 2236, 64, 10550, 4243, 120, 20050, 7650, 217, 36210,
  14310, 396, 67850, 23190, 640, 110200, 43510, 1210, 207400, 77630, 2180, 371300,
  134380, 4000, 645600, 214770, 7300, 1039050, 283900, 11600, 1385600, 328500, 16840, 1622960,
  348280, 23000, 1747060, 348060, 29800, 1782600, 336200, 38000, 1772110, 318700, 48000, 1744100,
  290800, 60000, 1669200, 251100, 73900, 1528100, 195360, 90980, 1287640, 142100, 112600, 1041900,
  95640, 139020, 812950, 57950, 169300, 616200, 32010, 208020, 465180, 14700, 258600, 353300,
  4900, 323000, 272000, 2400, 407300, 212300, 9300, 503000, 158200, 29100, 608200, 111700,
  63270, 710000, 78250, 109600, 793200, 57250, 165500, 862000, 42160, 225750, 914850, 29840,
  290400, 954000, 20300, 359700, 980300, 13400, 433450, 994950, 8750, 512050, 1000000, 5750,
  594500, 995000, 3900, 678400, 978600, 2750, 762100, 952000, 2100, 842500, 915400, 1800,
  916300, 870000, 1650, 978600, 816300, 1400, 1026300, 757000, 1100, 1056700, 694900, 1000,
  1062200, 631000, 800, 1045600, 566800, 600, 1002600, 503000, 340, 938400, 441200, 240,
  854450, 381000, 190, 751400, 321000, 100, 642400, 265000, 50, 541900, 217000, 30,
  447900, 175000, 20, 360800, 138200, 10, 283500, 107000, 0, 218700, 81600, 0,
  164900, 61000, 0, 121200, 44580, 0, 87400, 32000, 0, 63600, 23200, 0,
  46770, 17000, 0, 32900, 11920, 0, 22700, 8210, 0, 15840, 5723, 0,
  11359, 4102, 0, 8111, 2929, 0, 5790, 2091, 0, 4109, 1484, 0,
  2899, 1047, 0, 2049, 740, 0, 1440, 520, 0, 1000, 361, 0,
  690, 249, 0, 476, 172, 0, 332, 120, 0, 235, 85, 0,
  166, 60, 0, 117, 42, 0, 83, 30, 0, 59, 21, 0,
  42, 15, 0,
]

const metresAt = (sample: number) => (startNm + stepNm * sample) * 1e-9
/** The observer times the part of Planck's law that no temperature changes, in fifth powers of 560 nm. */
const weights = observer.map((value, i) => value * (metresAt(Math.floor(i / 3)) / 560e-9) ** -5)

/** CIE 1931 (x, y) of a black body at a temperature in kelvin, above 0. */
export function planckianChromaticity(kelvin: number): Chromaticity {
  const exponent = secondRadiationConstant / kelvin
  // Scaled by its value at 560 nm, or cold bodies would come to nothing.
  const scale = Math.expm1(exponent / 560e-9)
  let x = 0
  let y = 0
  let z = 0
  for (let i = 0, sample = 0; i < weights.length; i += 3, sample++) {
    const power = scale / Math.expm1(exponent / metresAt(sample))
    x += weights[i] * power
    y += weights[i + 1] * power
    z += weights[i + 2] * power
  }
  const sum = x + y + z
  return [x / sum, y / sum]
}

/** CIE 1960 (u, v) of CIE 1931 (x, y). */
export function xyToUv([x, y]: Chromaticity): [u: number, v: number] {
  const scale = 1 / (12 * y - 2 * x + 3)
  return [4 * x * scale, 6 * y * scale]
}

/** CIE 1931 (x, y) of CIE 1960 (u, v). */
export function uvToXy([u, v]: readonly [number, number]): [x: number, y: number] {
  const scale = 1 / (2 * u - 8 * v + 4)
  return [3 * u * scale, 2 * v * scale]
}

/** CIE 1960 (u, v) of a black body. */
export function planckianUv(kelvin: number): [u: number, v: number] {
  return xyToUv(planckianChromaticity(kelvin))
}
