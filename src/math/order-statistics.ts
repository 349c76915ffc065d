// Medians and other values by rank among many numbers without sorting them: Hoare, "Algorithm 65: Find", Communications of the
// ACM 4 (1961). All put the numbers in another order, and none of these may be NaN.

type Numbers = Float32Array | Float64Array

/** The element at index `wanted` of the `values` in order. */
function findInPlace(values: Numbers, wanted: number): number {
  let low = 0
  let high = values.length - 1
  while (low < high) {
    const pivot = values[(low + high) >> 1]
    let [i, j] = [low, high]
    while (i <= j) {
      while (values[i] < pivot) i++
      while (values[j] > pivot) j--
      if (i > j) break
      const swapped = values[i]
      values[i++] = values[j]
      values[j--] = swapped
    }
    if (j < wanted) low = i
    if (i > wanted) high = j
  }
  return values.length === 0 ? NaN : values[wanted]
}

/** The element at index n >> 1 of the n `values` in order; NaN where there are none. */
export const medianInPlace = (values: Numbers) => findInPlace(values, values.length >> 1)

/** The element nearest to `share` 0…1 of the way through the `values` in order; NaN where there are none. */
export const quantileInPlace = (values: Numbers, share: number) =>
  findInPlace(values, Math.round(share * (values.length - 1)))
