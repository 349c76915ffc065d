// Strokes of a brush that say where light was judged wrongly: the photographer's word stands above every estimate.

export interface Stroke {
  /** Places along the stroke, x and y 0…1 of the upright frame. */
  readonly points: readonly (readonly [x: number, y: number])[]
  /** Radius as a share of the frame's width. */
  readonly radius: number
  readonly light: 'sun' | 'shade'
}

/** Squared distance from (x, y) to the line between two places. */
function squaredDistance(x: number, y: number, [ax, ay]: readonly number[], [bx, by]: readonly number[]): number {
  const [dx, dy] = [bx - ax, by - ay]
  const length = dx * dx + dy * dy
  const t = length > 0 ? Math.min(Math.max(((x - ax) * dx + (y - ay) * dy) / length, 0), 1) : 0
  return (x - ax - t * dx) ** 2 + (y - ay - t * dy) ** 2
}

/** Sets `mask` (0 sun, 1 shade) to the light of each stroke in turn, in place. */
export function applyStrokes(mask: Float32Array, width: number, height: number, strokes: readonly Stroke[]): void {
  for (const { points, radius, light } of strokes) {
    const reach = Math.max(radius * width, 0.5)
    const places = points.map(([x, y]) => [x * width - 0.5, y * height - 0.5])
    for (let n = 0; n < places.length; n++) {
      const [from, to] = [places[Math.max(n - 1, 0)], places[n]]
      const range = (a: number, b: number, end: number): [number, number] => [
        Math.max(0, Math.ceil(Math.min(a, b) - reach)),
        Math.min(end - 1, Math.floor(Math.max(a, b) + reach)),
      ]
      const [left, right] = range(from[0], to[0], width)
      const [top, bottom] = range(from[1], to[1], height)
      for (let y = top; y <= bottom; y++) {
        for (let x = left; x <= right; x++) {
          if (squaredDistance(x, y, from, to) <= reach * reach) mask[y * width + x] = light === 'shade' ? 1 : 0
        }
      }
    }
  }
}

/** Strokes as one list of numbers, as steps hold them: of each 1 for shade or −1 for sun, radius, count of points, then x and y of each. */
export function strokesToNumbers(strokes: readonly Stroke[]): number[] {
  return strokes.flatMap(({ points, radius, light }) => [
    light === 'shade' ? 1 : -1,
    radius,
    points.length,
    ...points.flat(),
  ])
}

/** The strokes of a list of numbers; what is left of a list that ends too early is dropped. */
export function strokesOfNumbers(numbers: readonly number[]): Stroke[] {
  const strokes: Stroke[] = []
  for (let at = 0; at + 3 <= numbers.length;) {
    const [side, radius, count] = numbers.slice(at, at + 3)
    const end = at + 3 + 2 * count
    if (!(Number.isInteger(count) && count > 0 && radius > 0 && end <= numbers.length)) break
    const points = Array.from({ length: count }, (_, i) => [numbers[at + 3 + 2 * i], numbers[at + 4 + 2 * i]] as const)
    strokes.push({ points, radius, light: side > 0 ? 'shade' : 'sun' })
    at = end
  }
  return strokes
}
