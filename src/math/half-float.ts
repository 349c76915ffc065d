// Half-precision floats (IEEE 754 binary16) by their bits: what tables over all half floats are indexed by.

/** The number of 16 bits; infinities and NaN included. */
export function halfOfBits(bits: number): number {
  const sign = bits & 0x8000 ? -1 : 1
  const exponent = (bits >> 10) & 31
  const fraction = bits & 1023
  if (exponent === 31) return fraction === 0 ? sign * Infinity : NaN
  return exponent === 0 ? sign * fraction * 2 ** -24 : sign * (1 + fraction / 1024) * 2 ** (exponent - 15)
}

/** Bits of the half nearest towards 0; beyond the largest half, that one. NaN gives 0. */
export function bitsTowardsZero(value: number): number {
  const sign = value < 0 || Object.is(value, -0) ? 0x8000 : 0
  const size = Math.min(Math.abs(value), 65504)
  if (!(size >= 2 ** -14)) return sign + (Math.floor(size * 2 ** 24) || 0)
  // log2 may round up to the next power just below one.
  let exponent = Math.floor(Math.log2(size))
  if (2 ** exponent > size) exponent--
  return sign + ((exponent + 15) << 10) + Math.floor((size / 2 ** exponent - 1) * 1024)
}
