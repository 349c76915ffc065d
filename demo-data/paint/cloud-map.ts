// A marched sky as a picture of slopes: how much of the sky each line of sight loses to cloud, and how that cloud is lit.
// It is coarser than any frame; noise at lookup makes its edges crisp again, at every frame size alike.
import { fbm2 } from './noise.ts'

/** What a line of sight meets: transmission 0…1, sunlight and skylight on the cloud (1 = a white diffuser), distance in m. */
export interface CloudSight {
  transmission: number
  sun: number
  sky: number
  distanceM: number
}

export interface CloudMap {
  readonly columns: number
  readonly rows: number
  /** Slopes that it spans: across −reach…reach; row 0 is the top, the last row ends at the horizon. */
  readonly reach: number
  readonly transmission: Float32Array
  readonly sunlight: Float32Array
  readonly skylight: Float32Array
  readonly distanceM: Float32Array
}

/** An empty map: clear sky. `top` is the slope of its upper edge. */
export function createCloudMap(columns: number, reach: number, top: number): CloudMap {
  const rows = Math.max(2, Math.round((columns * top) / (2 * reach)))
  const plane = () => new Float32Array(columns * rows)
  return {
    columns,
    rows,
    reach,
    transmission: plane().fill(1),
    sunlight: plane(),
    skylight: plane(),
    distanceM: plane(),
  }
}

/** Evens out the speckle that jittered steps leave in light and edges. */
export function smoothCloudMap(map: CloudMap): void {
  soften(map.sunlight, map.transmission, map.columns, map.rows)
  soften(map.skylight, map.transmission, map.columns, map.rows)
  smoothEdges(map.transmission, map.columns, map.rows)
}

/** Averages weighted by cover, so that clouds' outlines stay. */
function soften(values: Float32Array, transmission: Float32Array, columns: number, rows: number): void {
  const before = values.slice()
  for (let j = 1; j < rows - 1; j++) {
    for (let i = 1; i < columns - 1; i++) {
      const p = j * columns + i
      let sum = 0
      let weight = 0
      for (let k = -1; k <= 1; k++) {
        for (let l = -1; l <= 1; l++) {
          const q = p + k * columns + l
          const w = (2 - Math.abs(k)) * (2 - Math.abs(l)) * (1 - transmission[q])
          sum += w * before[q]
          weight += w
        }
      }
      if (weight > 0) values[p] = sum / weight
    }
  }
}
/** Averages away the speckle of jittered steps along the clouds' edges; the sampler's wisps make them crisp again. */
function smoothEdges(transmission: Float32Array, columns: number, rows: number): void {
  const before = transmission.slice()
  for (let j = 1; j < rows - 1; j++) {
    for (let i = 1; i < columns - 1; i++) {
      const p = j * columns + i
      const cross = before[p - 1] + before[p + 1] + before[p - columns] + before[p + columns]
      const corners =
        before[p - columns - 1] + before[p - columns + 1] + before[p + columns - 1] + before[p + columns + 1]
      transmission[p] = 0.36 * before[p] + 0.11 * cross + 0.05 * corners
    }
  }
}

function transmissionAround(map: Float32Array, columns: number, rows: number, gx: number, gy: number): number {
  const x = Math.max(2, Math.min(columns - 3, Math.round(gx)))
  const y = Math.max(2, Math.min(rows - 3, Math.round(gy)))
  const p = y * columns + x
  const cross = Math.min(map[p - 2], map[p + 2], map[p - 2 * columns], map[p + 2 * columns])
  return Math.min(map[p], cross, map[p - 1 - columns], map[p + 1 + columns], map[p + 1 - columns], map[p - 1 + columns])
}

/** Looks along slopes `across`, `up`; `pixel` is the slope width of a pixel. Bilinear, weighted by cover. */
export function sampleClouds(map: CloudMap, across: number, up: number, pixel: number, out: CloudSight): void {
  const { columns, rows, transmission } = map
  const perSlope = columns / (2 * map.reach)
  let gx = (across + map.reach) * perSlope - 0.5
  let gy = rows - up * perSlope - 0.5
  if (transmissionAround(transmission, columns, rows, gx, gy) > 0.999) {
    out.transmission = 1
    return
  }
  const fp = pixel * perSlope * 0.45
  const warpX = 0.6 * fbm2(gx * 0.4, gy * 0.4, 2, 71, fp)
  const warpY = 0.6 * fbm2(gx * 0.4 + 40, gy * 0.4, 2, 75, fp)
  gx += warpX
  gy += warpY
  const i = Math.max(0, Math.min(columns - 2, Math.floor(gx)))
  const j = Math.max(0, Math.min(rows - 2, Math.floor(gy)))
  const u = Math.max(0, Math.min(1, gx - i))
  const v = Math.max(0, Math.min(1, gy - j))
  const p = j * columns + i
  let covered = 0
  let sun = 0
  let sky = 0
  let far = 0
  for (let k = 0; k < 4; k++) {
    const q = p + (k & 1) + (k >> 1) * columns
    const w = (k & 1 ? u : 1 - u) * (k >> 1 ? v : 1 - v) * (1 - transmission[q])
    covered += w
    sun += w * map.sunlight[q]
    sky += w * map.skylight[q]
    far += w * map.distanceM[q]
  }
  if (covered < 0.002) {
    out.transmission = 1
    return
  }
  const wisps = fbm2(gx * 0.21, gy * 0.21, 7, 77, fp * 0.5)
  const t = Math.max(0, 1 - covered)
  out.transmission = t ** Math.exp(1.2 * wisps)
  out.sun = (sun / covered) * (1 + 0.06 * wisps)
  out.sky = sky / covered
  out.distanceM = far / covered
}
