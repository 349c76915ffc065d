// Slowly varying properties of a landscape, computed once on a grid of directions and distances and then only interpolated.
// Rows lie in equal ratios of distance: what is near gets small cells, which is also how the camera sees it.

export interface PolarGrid {
  /** Moves to X, Z metres; `read` then answers for this point. */
  locate(x: number, z: number): void
  /** Channel `k` at the located point, bilinear. */
  read(k: number): number
}

export interface PolarGridOptions {
  readonly nearM: number
  readonly farM: number
  /** Largest |X/Z|. */
  readonly reach: number
  readonly columns: number
  readonly rows: number
  readonly channels: number
}

/** Fills the grid: `fill` writes the channels of one point into `out`. */
export function createPolarGrid(
  options: PolarGridOptions,
  fill: (x: number, z: number, out: Float64Array) => void,
): PolarGrid {
  const { nearM, farM, reach, columns, rows, channels } = options
  const data = new Float32Array(columns * rows * channels)
  const out = new Float64Array(channels)
  const ratio = Math.log(farM / nearM) / (rows - 1)
  for (let j = 0, at = 0; j < rows; j++) {
    const z = nearM * Math.exp(j * ratio)
    for (let i = 0; i < columns; i++, at += channels) {
      fill(((2 * i) / (columns - 1) - 1) * reach * z, z, out)
      data.set(out, at)
    }
  }
  let base = 0
  let u = 0
  let v = 0
  const below = columns * channels
  return {
    locate(x, z) {
      const gx = Math.min(columns - 1.001, Math.max(0, (x / (z * reach) + 1) * 0.5 * (columns - 1)))
      const gz = Math.min(rows - 1.001, Math.max(0, Math.log(z / nearM) / ratio))
      const i = Math.floor(gx)
      const j = Math.floor(gz)
      u = gx - i
      v = gz - j
      base = (j * columns + i) * channels
    },
    read(k) {
      const at = base + k
      const near = data[at] + (data[at + channels] - data[at]) * u
      const far = data[at + below] + (data[at + below + channels] - data[at + below]) * u
      return near + (far - near) * v
    },
  }
}
