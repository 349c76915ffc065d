// A smooth function of one distance, worked out once and then only interpolated: what varies along a shore is asked for by
// every pixel.

const stepM = 0.2
const reachM = 900

/** `f` between −10 and 900 m, linear between values 20 cm apart, constant beyond. */
export function tabulate(f: (distanceM: number) => number): (distanceM: number) => number {
  const table = Float64Array.from({ length: (reachM + 10) / stepM + 2 }, (_, i) => f(i * stepM - 10))
  const last = table.length - 1.001
  return (distanceM) => {
    const at = Math.min(last, Math.max(0, (distanceM + 10) / stepM))
    const i = Math.floor(at)
    return table[i] + (table[i + 1] - table[i]) * (at - i)
  }
}
