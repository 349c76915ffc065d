// How the finished picture is spread over its range, from a small copy of it: encoded 8-bit RGBA in, shares of its pixels out.

export interface ChannelSpread {
  /** Share 0…1 of the pixels in even parts of the range, black first. */
  readonly bins: readonly number[]
  /** Shares at the last code and at 0. */
  readonly atWhite: number
  readonly atBlack: number
}

/** Parts of the range (our choice: four codes each, finer ones show the curve's rounding). */
const BINS = 64

/** Red, green and blue of interleaved RGBA codes. */
export function outputHistogram(codes: Uint8ClampedArray): ChannelSpread[] {
  const share = 4 / codes.length
  return [0, 1, 2].map((channel) => {
    const counts = new Uint32Array(256)
    for (let i = channel; i < codes.length; i += 4) counts[codes[i]]++
    const bins = Array.from({ length: BINS }, (_, bin) => {
      const from = bin * (256 / BINS)
      return counts.subarray(from, from + 256 / BINS).reduce((sum, count) => sum + count, 0) * share
    })
    return { bins, atWhite: counts[255] * share, atBlack: counts[0] * share }
  })
}
