// Points of (u, v) sorted into squares, so that the neighbours of a colour are found without looking at every cell.
export interface ColourIndex {
  /** Indices of the points within `radius` of (u, v), in no order. */
  near(u: number, v: number): number[]
}

/** Index for neighbourhoods of one `radius` in stops. */
export function indexColours(us: Float32Array, vs: Float32Array, radius: number): ColourIndex {
  const squares = new Map<number, number[]>()
  const column = (value: number) => Math.floor(value / radius)
  const key = (x: number, y: number) => x * 65_536 + y
  for (let i = 0; i < us.length; i++) {
    const square = key(column(us[i]), column(vs[i]))
    const points = squares.get(square)
    if (points) points.push(i)
    else squares.set(square, [i])
  }
  return {
    near(u, v) {
      const found: number[] = []
      for (let y = column(v) - 1; y <= column(v) + 1; y++) {
        for (let x = column(u) - 1; x <= column(u) + 1; x++) {
          for (const i of squares.get(key(x, y)) ?? []) {
            if ((us[i] - u) ** 2 + (vs[i] - v) ** 2 < radius * radius) found.push(i)
          }
        }
      }
      return found
    },
  }
}
