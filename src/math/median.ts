// The median of many numbers without sorting them: Hoare, "Algorithm 65: Find", Communications of the ACM 4 (1961).

/** The element at index n >> 1 of the n `values` in order; puts them in another order. NaN where there are none. */
export function medianInPlace(values: Float64Array): number {
  const wanted = values.length >> 1
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
