// Shadows that a landscape casts on itself. Heights are laid out on grids turned so that light runs along the rows; one sweep
// per row then finds, for every point, the height above which the sun's lower and upper limb can be seen.
// Between the two lies the penumbra, so shadows are crisp near what casts them and soft far from it. Grids get coarser with
// distance from the camera and do not depend on the frame size.

interface ShadowLevel {
  /** Distances Z in metres that this grid serves. */
  readonly fromM: number
  readonly toM: number
  readonly cellM: number
}

export interface SunShadow {
  /** Share of the sun's disc seen from height y at X, Z; 1 where no grid reaches. */
  share(x: number, y: number, z: number): number
}

export interface SunShadowOptions {
  /** Direction to the sun, unit vector. */
  readonly sun: readonly [number, number, number]
  /** Largest |X/Z| of the view. */
  readonly reach: number
  /** Height difference in metres of the tallest thing that casts a shadow. */
  readonly reliefM: number
  /** From near to far. */
  readonly levels: readonly ShadowLevel[]
}

/** Half the sun's apparent diameter: .266° (almanac value, from memory). */
const sunRadius = (0.266 * Math.PI) / 180

interface Grid {
  readonly toM: number
  readonly cellM: number
  readonly a0: number
  readonly b0: number
  readonly columns: number
  readonly rows: number
  readonly umbra: Float32Array
  readonly penumbra: Float32Array
}

function createGrid(
  height: (x: number, z: number, footprintM: number) => number,
  options: SunShadowOptions,
  level: ShadowLevel,
  ax: number,
  az: number,
): Grid {
  const { reach, reliefM, sun } = options
  const { cellM, fromM, toM } = level
  const elevation = Math.asin(sun[1])
  const dropUpper = Math.tan(elevation + sunRadius) * cellM
  const dropLower = Math.tan(Math.max(0.01, elevation - sunRadius)) * cellM
  const corners = [fromM, toM].flatMap((z) => [-reach * z, reach * z].map((x) => [x * ax + z * az, z * ax - x * az]))
  const castM = reliefM / Math.tan(Math.max(0.01, elevation - sunRadius))
  const a0 = Math.min(...corners.map((c) => c[0])) - castM
  const b0 = Math.min(...corners.map((c) => c[1])) - cellM
  const columns = Math.ceil((Math.max(...corners.map((c) => c[0])) - a0) / cellM) + 2
  const rows = Math.ceil((Math.max(...corners.map((c) => c[1])) - b0) / cellM) + 2
  const umbra = new Float32Array(columns * rows)
  const penumbra = new Float32Array(columns * rows)
  const margin = reach * 3 * cellM + 1
  for (let j = 0; j < rows; j++) {
    const b = b0 + j * cellM
    let upper = -1e9
    let lower = -1e9
    for (let i = 0, at = j * columns; i < columns; i++, at++) {
      const a = a0 + i * cellM
      umbra[at] = upper
      penumbra[at] = lower
      const x = a * ax - b * az
      const z = a * az + b * ax
      const wanted = z > fromM * 0.5 - castM && z < toM + castM && Math.abs(x) < reach * Math.max(z, 0) + castM + margin
      const h = wanted ? height(x, z, cellM) : -1e9
      upper = Math.max(upper, h) - dropUpper
      lower = Math.max(lower, h) - dropLower
    }
  }
  return { toM, cellM, a0, b0, columns, rows, umbra, penumbra }
}

/** Prepares the grids: about one call of `height` per cell. */
export function createSunShadow(
  height: (x: number, z: number, footprintM: number) => number,
  options: SunShadowOptions,
): SunShadow {
  const flat = Math.hypot(options.sun[0], options.sun[2])
  const ax = -options.sun[0] / flat
  const az = -options.sun[2] / flat
  const grids = options.levels.map((level) => createGrid(height, options, level, ax, az))
  return {
    share(x, y, z) {
      const grid = grids.find((g) => z < g.toM)
      if (!grid) return 1
      const ga = (x * ax + z * az - grid.a0) / grid.cellM
      const gb = (z * ax - x * az - grid.b0) / grid.cellM
      const i = Math.floor(ga)
      const j = Math.floor(gb)
      if (i < 0 || j < 0 || i >= grid.columns - 1 || j >= grid.rows - 1) return 1
      const u = ga - i
      const v = gb - j
      const at = j * grid.columns + i
      const below = at + grid.columns
      const w00 = (1 - u) * (1 - v)
      const w10 = u * (1 - v)
      const w01 = (1 - u) * v
      const w11 = u * v
      const { umbra, penumbra } = grid
      const dark = w00 * umbra[at] + w10 * umbra[at + 1] + w01 * umbra[below] + w11 * umbra[below + 1]
      const clear = w00 * penumbra[at] + w10 * penumbra[at + 1] + w01 * penumbra[below] + w11 * penumbra[below + 1]
      const soft = 0.04 * grid.cellM
      const share = (y - dark + soft) / (clear - dark + 2 * soft)
      return share <= 0 ? 0 : share >= 1 ? 1 : share * share * (3 - 2 * share)
    },
  }
}
