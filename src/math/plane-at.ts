// Bilinear reading of a plane laid over a frame, pixel centres half a pixel inside its edges; beyond them the edge holds.

interface Plane {
  readonly width: number
  readonly height: number
  /** Row by row. */
  readonly data: Float32Array
}

/** The plane's value at a place 0…1 of the frame; the twin of `planeAt` in `shaders/table.glsl`. */
export function planeAt({ width, height, data }: Plane, x: number, y: number): number {
  const left = Math.min(Math.max(x * width - 0.5, 0), width - 1)
  const top = Math.min(Math.max(y * height - 0.5, 0), height - 1)
  const column = Math.floor(left)
  const row = Math.floor(top)
  const right = Math.min(column + 1, width - 1)
  const below = Math.min(row + 1, height - 1)
  const across = left - column
  const upper = data[row * width + column] * (1 - across) + data[row * width + right] * across
  const lower = data[below * width + column] * (1 - across) + data[below * width + right] * across
  return upper + (top - row) * (lower - upper)
}
