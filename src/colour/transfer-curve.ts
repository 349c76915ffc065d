// Encoding curves of output spaces: a line near black, then a scaled power. Linear 0…1 in, encoded 0…1 out.
// One shape serves all standards used here, so that the GPU needs one function and a profile can carry the curve exactly.

export interface TransferCurve {
  /** Slope of the line below `threshold` (linear light). */
  readonly slope: number
  readonly threshold: number
  /** Above the threshold: `scale · x^exponent − (scale − 1)`. */
  readonly exponent: number
  readonly scale: number
}

/** IEC 61966-2-1; also the curve of Display P3 in CSS Color 4. */
export const SRGB_CURVE: TransferCurve = { slope: 12.92, threshold: 0.0031308, exponent: 1 / 2.4, scale: 1.055 }
/** ITU-R BT.2020-2 table 4, the camera curve, with the constants' exact solution. It is chosen over BT.1886 for its finite slope at black. */
export const REC2020_CURVE: TransferCurve = {
  slope: 4.5,
  threshold: 0.018053968510807,
  exponent: 0.45,
  scale: 1.09929682680944,
}
/** ISO 22028-2 (ROMM RGB). */
export const ROMM_CURVE: TransferCurve = { slope: 16, threshold: 1 / 512, exponent: 1 / 1.8, scale: 1 }

/** Encoded value of `linear` in 0…1; negative input stays on the line. */
export function encode(curve: TransferCurve, linear: number): number {
  return linear < curve.threshold ? curve.slope * linear : curve.scale * linear ** curve.exponent - (curve.scale - 1)
}

/** Linear value of `encoded` in 0…1; the inverse of `encode`. */
export function decode(curve: TransferCurve, encoded: number): number {
  return encoded < curve.slope * curve.threshold
    ? encoded / curve.slope
    : ((encoded + curve.scale - 1) / curve.scale) ** (1 / curve.exponent)
}
