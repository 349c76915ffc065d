// ACEScct (Academy S-2016-001): the log curve in front of colour tables, because a grid on linear light is far too coarse in the dark.
// Linear in (any sign), curve value out: 0 ↦ .0729, .18 ↦ .4136, 1 ↦ .5548, 222.9 ↦ 1.

const BREAK_LINEAR = 0.0078125
const BREAK_CODED = 0.155251141552511
const SLOPE = 10.5402377416545
const OFFSET = 0.0729055341958355

/** Curve value of a linear value; below the break a line, so negative values survive. */
export function encodeAcescct(linear: number): number {
  return linear <= BREAK_LINEAR ? SLOPE * linear + OFFSET : (Math.log2(linear) + 9.72) / 17.52
}

/** Linear value of a curve value; the inverse of `encodeAcescct`. */
export function decodeAcescct(coded: number): number {
  return coded <= BREAK_CODED ? (coded - OFFSET) / SLOPE : 2 ** (coded * 17.52 - 9.72)
}
