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
