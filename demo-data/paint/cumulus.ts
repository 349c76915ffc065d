// Fair-weather cumulus: a layer of flat-based clouds in space, marched once at moderate size towards the camera and lit by
// marching on towards the sun. Angles are slopes (X/Z and height/Z), so the sky keeps its layout at every frame size.
// Parameters are tuned by eye, without a source.
import type { Material, Palette } from '../light/triplets.ts'
import { type Air, throughAir } from './air.ts'
import { createBrush, light } from './brush.ts'
import type { Camera } from './camera.ts'
import { type Band, coverIndex } from './canvas.ts'
import { type CloudMap, type CloudSight, createCloudMap, sampleClouds, smoothCloudMap } from './cloud-map.ts'
import { billow, createCloudVolume } from './cloud-volume.ts'
import { hashUnit } from './hash.ts'
import { fbm2 } from './noise.ts'

export interface CumulusOptions {
  readonly seed: number
  /** Direction to the sun, unit vector. */
  readonly sun: readonly [number, number, number]
  /** Part of the sky that is cloud: about −.2 (few) to .1 (many); .0 is half and half. */
  readonly cover: number
  /** Slides the weather over the camera, km: try several and keep the best sky. */
  readonly offsetKm: readonly [number, number]
  /** Slopes that the map spans: across −reach…reach, up 0…top. */
  readonly reach: number
  readonly top: number
  /** Columns of the map; 800 by default. */
  readonly columns?: number
}

export interface Cumulus {
  /** Looks along slopes `across`, `up`; `pixel` is the slope width of a pixel. */
  sample(across: number, up: number, pixel: number, out: CloudSight): void
}

const baseKm = 1.25
const thicknessKm = 1.2
const farKm = 42
const gridSide = 512
const gridKm = 56
const extinctionPerKm = 34

function coverGrid(options: CumulusOptions): Float32Array {
  const grid = new Float32Array(gridSide * gridSide)
  for (let j = 0; j < gridSide; j++) {
    const z = (j / gridSide) * gridKm - 4 + options.offsetKm[1]
    for (let i = 0; i < gridSide; i++) {
      const x = (i / gridSide - 0.5) * gridKm + options.offsetKm[0]
      const c = fbm2(x / 2.3, z / 2.3, 3, options.seed) + options.cover
      grid[j * gridSide + i] = c > 0 ? c ** 0.75 : -1
    }
  }
  return grid
}

/** Prepares the sky: about 2 s for 800 columns. */
export function createCumulus(options: CumulusOptions): Cumulus {
  const volume = createCloudVolume(options.seed)
  const grid = coverGrid(options)
  const [sunX, sunY, sunZ] = options.sun

  const density = (x: number, y: number, z: number, fine: boolean): number => {
    const h = (y - baseKm) / thicknessKm
    if (h < 0 || h > 1.25) return 0
    const gi = (x / gridKm + 0.5) * gridSide
    const gj = ((z + 4) / gridKm) * gridSide
    const i = Math.floor(gi)
    const j = Math.floor(gj)
    if (i < 0 || j < 0 || i >= gridSide - 1 || j >= gridSide - 1) return 0
    const u = gi - i
    const v = gj - j
    const p = j * gridSide + i
    const near = grid[p] + (grid[p + 1] - grid[p]) * u
    const c = near + (grid[p + gridSide] + (grid[p + gridSide + 1] - grid[p + gridSide]) * u - near) * v
    const rough = 0.95 * c - h
    if (rough < -0.5) return 0
    let f = rough + (billow(volume, 0.42 * x, 0.5 * y, 0.42 * z) - 0.55) * (1 - 0.35 * h)
    if (f < -0.2) return 0
    const rx = 0.8 * x - 0.6 * z
    const rz = 0.6 * x + 0.8 * z
    f += 0.27 * (1 - 0.45 * h) * (billow(volume, 1.7 * rx, 1.7 * y, 1.7 * rz) - 0.55)
    if (fine) f += 0.13 * (1 - 0.4 * h) * (billow(volume, 4.3 * x + 2.7 * y, 4.9 * y - 1.1 * z, 4.5 * z) - 0.55)
    if (f <= 0) return 0
    const floor = h < 0.05 ? h / 0.05 : 1
    const d = 3.2 * f
    return (d > 1 ? 1 : d) * floor
  }

  const columns = options.columns ?? 800
  const map: CloudMap = createCloudMap(columns, options.reach, options.top)
  const { rows, transmission, sunlight, skylight, distanceM } = map
  for (let j = 0; j < rows; j++) {
    const up = ((rows - j - 0.5) / rows) * options.top
    for (let i = 0; i < columns; i++) {
      const across = ((i + 0.5) / columns - 0.5) * 2 * options.reach
      const length = Math.sqrt(1 + across * across + up * up)
      let z = baseKm / up
      const zEnd = Math.min((baseKm + 1.25 * thicknessKm) / up, farKm)
      if (z > farKm) continue
      const jitter = hashUnit(i, j, options.seed)
      let t = 1
      let sun = 0
      let sky = 0
      let depth = 0
      let first = true
      while (z < zEnd && t > 0.01) {
        let step = Math.max(0.018, 0.0085 * z)
        if (first) z += step * jitter
        first = false
        const x = across * z
        const y = up * z
        const d = density(x, y, z, true)
        if (d <= 0) {
          const h = (y - baseKm) / thicknessKm
          if (density(x, y, z, false) <= 0 && h > 0.02) step *= 1.7
          z += step
          continue
        }
        let tau = 0
        let reach = 0.05
        let s = 0.02
        for (let k = 0; k < 5; k++) {
          s += reach * 0.5
          tau += density(x + sunX * s, y + sunY * s, z + sunZ * s, k < 2) * reach * extinctionPerKm
          s += reach * 0.5
          reach *= 1.75
        }
        const lit = 0.78 * Math.exp(-tau) + 0.42 * Math.exp(-0.28 * tau) + 0.18 * Math.exp(-0.07 * tau)
        const absorbed = t * (1 - Math.exp(-d * extinctionPerKm * step * length))
        const h = (y - baseKm) / thicknessKm
        sun += absorbed * lit
        sky += absorbed * (0.4 + 0.8 * Math.min(1, h))
        depth += absorbed * z
        t -= absorbed
        z += step
      }
      const p = j * columns + i
      const covered = 1 - t
      if (covered < 0.002) continue
      transmission[p] = t < 0.012 ? 0 : t
      sunlight[p] = sun / covered
      skylight[p] = sky / covered
      distanceM[p] = (depth / covered) * 1000 * length
    }
  }
  smoothCloudMap(map)
  return { sample: (across, up, pixel, out) => sampleClouds(map, across, up, pixel, out) }
}

/** Paints the clouds over the sky of the band, down to the horizon. */
export function paintCumulus(band: Band, camera: Camera, cumulus: Cumulus, palette: Palette, air: Air): void {
  const cloud: Material = palette.of('cloud')
  const brush = createBrush()
  const sight: CloudSight = { transmission: 1, sun: 0, sky: 0, distanceM: 0 }
  const pixel = 1 / camera.focalPx
  const last = Math.min(band.y1, Math.ceil(camera.horizonY))
  for (let y = band.y0; y < last; y++) {
    const up = (camera.horizonY - y - 0.5) * pixel
    const row = (y - band.y0) * band.width
    for (let x = 0; x < band.width; x++) {
      cumulus.sample((x + 0.5 - camera.centreX) * pixel, up, pixel, sight)
      if (sight.transmission >= 0.999) continue
      light(brush, cloud, sight.sun, sight.sky)
      throughAir(brush, air, sight.distanceM)
      coverIndex(band, row + x, 1 - sight.transmission, brush)
    }
  }
}
