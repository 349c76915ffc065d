// Light through holes in a canopy, and the shadows of trunks, on level ground: a map from above in metres, share of sun 0…1.
// Anything above the ground asks for the spot its sunbeam would strike, so path, ferns, bark and leaves share one pattern.
import { hash } from './hash.ts'
import { type Cells, cells2, fbm2 } from './noise.ts'
import type { Vector } from './vector.ts'

export interface LightMap {
  /** Share of sun reaching a point in the air, 0…1. */
  at(x: number, y: number, z: number): number
}

interface Post {
  readonly x: number
  readonly z: number
  readonly radiusM: number
}

export interface LightMapOptions {
  readonly sun: Vector
  readonly seed: number
  readonly x0: number
  readonly x1: number
  readonly z0: number
  readonly z1: number
  readonly cellM: number
  /** Share of the area that large gaps light up, about 0…1. */
  readonly gaps: number
  /** Openings placed by eye: where on the ground their middle falls, and their radius. */
  readonly openings: readonly { readonly x: number; readonly z: number; readonly radiusM: number }[]
  /** Things that cast a stripe. */
  readonly posts: readonly Post[]
}

/** Angular radius of the sun in radians. */
const sunRadius = 0.00465
/** Height of the leaves whose gaps are imaged, metres: sets how soft and how large the spots are. Own estimate. */
const canopyM = 13

function smooth(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

export function createLightMap(options: LightMapOptions): LightMap {
  const { sun, seed, x0, z0, cellM } = options
  const width = Math.ceil((options.x1 - x0) / cellM)
  const depth = Math.ceil((options.z1 - z0) / cellM)
  const map = new Float32Array(width * depth)
  const flat = Math.hypot(sun[0], sun[2])
  const dirX = sun[0] / flat
  const dirZ = sun[2] / flat
  const stretch = sun[1]
  const spot: Cells = { f1: 0, f2: 0, id: 0 }
  const threshold = 0.45 - options.gaps
  for (let j = 0; j < depth; j++) {
    for (let i = 0; i < width; i++) {
      const x = x0 + (i + 0.5) * cellM
      const z = z0 + (j + 0.5) * cellM
      const along = (x * dirX + z * dirZ) * stretch
      const across = x * dirZ - z * dirX
      const broad = fbm2(along / 4.2, across / 4.2, 2, seed)
      const ragged = fbm2(along / 0.75, across / 0.75, 3, seed + 7, 0.2)
      let open = broad
      for (const o of options.openings) {
        const dx = (x - o.x) / o.radiusM
        const dz = ((z - o.z) / o.radiusM) * stretch
        open = Math.max(open, 0.75 - 0.7 * (dx * dx + dz * dz) + 0.3 * broad)
      }
      const large = smooth(threshold - 0.05, threshold + 0.13, open + 0.42 * ragged)
      cells2(along / 0.42, across / 0.42, seed + 3, spot)
      const size = 0.13 + (0.2 * ((spot.id >>> 8) & 255)) / 255
      const strength = (hash(spot.id, 5) & 255) / 255
      const small = smooth(size + 0.09, size - 0.09, spot.f1) * strength * strength * smooth(-0.35, 0.45, broad)
      map[j * width + i] = Math.min(1, large + 0.75 * small)
    }
  }
  for (const post of options.posts) castPost(map, width, depth, options, post, dirX, dirZ)
  const lookup = (x: number, z: number) => {
    const gx = Math.min(width - 1.001, Math.max(0, (x - x0) / cellM - 0.5))
    const gz = Math.min(depth - 1.001, Math.max(0, (z - z0) / cellM - 0.5))
    const i = Math.floor(gx)
    const j = Math.floor(gz)
    const u = gx - i
    const v = gz - j
    const o = j * width + i
    const near = map[o] + (map[o + 1] - map[o]) * u
    const far = map[o + width] + (map[o + width + 1] - map[o + width]) * u
    return near + (far - near) * v
  }
  return { at: (x, y, z) => lookup(x - (sun[0] / sun[1]) * y, z - (sun[2] / sun[1]) * y) }
}

function castPost(
  map: Float32Array,
  width: number,
  depth: number,
  options: LightMapOptions,
  post: Post,
  dirX: number,
  dirZ: number,
): void {
  const { x0, z0, cellM, sun } = options
  const reach = canopyM / (sun[1] / Math.hypot(sun[0], sun[2]))
  const endX = post.x - dirX * reach
  const endZ = post.z - dirZ * reach
  const margin = post.radiusM * 2 + 0.3
  const i0 = Math.max(0, Math.floor((Math.min(post.x, endX) - margin - x0) / cellM))
  const i1 = Math.min(width - 1, Math.ceil((Math.max(post.x, endX) + margin - x0) / cellM))
  const j0 = Math.max(0, Math.floor((Math.min(post.z, endZ) - margin - z0) / cellM))
  const j1 = Math.min(depth - 1, Math.ceil((Math.max(post.z, endZ) + margin - z0) / cellM))
  for (let j = j0; j <= j1; j++) {
    for (let i = i0; i <= i1; i++) {
      const x = x0 + (i + 0.5) * cellM - post.x
      const z = z0 + (j + 0.5) * cellM - post.z
      const away = -(x * dirX + z * dirZ)
      if (away < 0 || away > reach) continue
      const off = Math.abs(x * dirZ - z * dirX)
      const soft = (sunRadius * away) / sun[1] + cellM * 0.7
      const dark = smooth(post.radiusM + soft, post.radiusM - soft, off)
      map[j * width + i] *= 1 - dark * smooth(reach, reach * 0.6, away)
    }
  }
}
