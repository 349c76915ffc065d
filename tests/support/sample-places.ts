// Places to compare colours at: spread evenly, the same in every run.

/** `count` triples within `from`…`to`, by the R3 sequence (M. Roberts, "The unreasonable effectiveness of quasirandom sequences", 2018). */
export function evenPlaces(count: number, from = 0, to = 1): number[][] {
  const steps = [0.8191725133961645, 0.6710436067037893, 0.5497004779019703]
  return Array.from({ length: count }, (_, i) => steps.map((step) => from + (((i + 1) * step) % 1) * (to - from)))
}

/** Largest difference between two lists of colours, absolute below 1 and relative above. */
export function largestApart(actual: readonly (readonly number[])[], wanted: readonly (readonly number[])[]): number {
  return Math.max(
    ...actual.flatMap((rgb, i) =>
      rgb.map((value, c) => Math.abs(value - wanted[i][c]) / Math.max(1, Math.abs(wanted[i][c]))),
    ),
  )
}
