// Fractions for metadata: cameras write 1/250 s, decoders hand over 0.004.
import type { Rational } from './tiff-directory.ts'

/** Relative error at which a short fraction counts as the meant one: above 32-bit float rounding, below 1/8000 against 1/8001. */
const tolerance = 1e-5

/**
 * The shortest continued fraction within 1e-5 (relative) of `value`; 0 gives 0/1.
 * `value` is 0 or more and below 2³².
 */
export function toRational(value: number): Rational {
  if (!(value >= 0 && value < 2 ** 32)) throw new RangeError(`${value} cannot be written as an unsigned fraction.`)
  let [numerator, previousNumerator] = [Math.floor(value), 1]
  let [denominator, previousDenominator] = [1, 0]
  let rest = value - Math.floor(value)
  while (rest > 0 && Math.abs(numerator / denominator - value) > tolerance * value) {
    const term = Math.floor(1 / rest)
    if (term * denominator + previousDenominator >= 2 ** 32) break
    rest = 1 / rest - term
    ;[numerator, previousNumerator] = [term * numerator + previousNumerator, numerator]
    ;[denominator, previousDenominator] = [term * denominator + previousDenominator, denominator]
  }
  return [numerator, denominator]
}
