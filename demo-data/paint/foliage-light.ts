// How much light reaches every leaf and limb of a plant: leaf area is gathered in a grid of cubes, then each leaf looks
// through it towards the sun and towards parts of the sky. This is what gives foliage its depth.
import { type Foliage, leafStride, limbStride } from './foliage.ts'
import type { Vector } from './vector.ts'

export interface FoliageLight {
  /** Share of direct sun that passes the other leaves, 0…1, before the angle of incidence. */
  readonly leafSun: Float32Array
  /** Share of the sky seen, 0…1. */
  readonly leafSky: Float32Array
  readonly limbSun: Float32Array
  readonly limbSky: Float32Array
}

export interface FoliageLightOptions {
  readonly sun: Vector
  /** Side of a cube in metres. */
  readonly cellM: number
  /** Optical depth per metre and per square metre of leaf in a cubic metre; .5 for leaves of random direction. */
  readonly extinction?: number
}

const skyDirections: readonly Vector[] = [
  [0, 1, 0],
  [0.8, 0.6, 0],
  [-0.8, 0.6, 0],
  [0, 0.6, 0.8],
  [0, 0.6, -0.8],
]

/** Computes the light of every part of `foliage`. */
export function lightFoliage(foliage: Foliage, options: FoliageLightOptions): FoliageLight {
  const { leaves, leafCount, limbs, limbCount } = foliage
  const { cellM, extinction = 0.5 } = options
  const low = [Infinity, Infinity, Infinity]
  const high = [-Infinity, -Infinity, -Infinity]
  for (let i = 0; i < leafCount; i++) {
    for (let a = 0; a < 3; a++) {
      const v = leaves[i * leafStride + a]
      if (v < low[a]) low[a] = v
      if (v > high[a]) high[a] = v
    }
  }
  const size = low.map((v, a) => Math.max(1, Math.ceil((high[a] - v) / cellM) + 1))
  const [sx, sy, sz] = size.map((s) => (Number.isFinite(s) ? s : 1))
  const density = new Float32Array(sx * sy * sz)
  const perCell = extinction / (cellM * cellM * cellM)
  for (let i = 0; i < leafCount; i++) {
    const o = i * leafStride
    const cx = Math.floor((leaves[o] + leaves[o + 3] / 2 - low[0]) / cellM)
    const cy = Math.floor((leaves[o + 1] + leaves[o + 4] / 2 - low[1]) / cellM)
    const cz = Math.floor((leaves[o + 2] + leaves[o + 5] / 2 - low[2]) / cellM)
    if (cx < 0 || cy < 0 || cz < 0 || cx >= sx || cy >= sy || cz >= sz) continue
    const length = Math.hypot(leaves[o + 3], leaves[o + 4], leaves[o + 5])
    density[(cz * sy + cy) * sx + cx] += perCell * length * leaves[o + 9] * 1.33
  }

  const depthAlong = (x: number, y: number, z: number, d: Vector): number => {
    let px = (x - low[0]) / cellM + d[0] * 0.7
    let py = (y - low[1]) / cellM + d[1] * 0.7
    let pz = (z - low[2]) / cellM + d[2] * 0.7
    let sum = 0
    for (;;) {
      const ix = Math.floor(px)
      const iy = Math.floor(py)
      const iz = Math.floor(pz)
      if (ix < -1 || iy < -1 || iz < -1 || ix > sx || iy > sy || iz > sz) return sum * cellM
      if (ix >= 0 && iy >= 0 && iz >= 0 && ix < sx && iy < sy && iz < sz) sum += density[(iz * sy + iy) * sx + ix]
      px += d[0]
      py += d[1]
      pz += d[2]
    }
  }
  const skyOfCell = new Float32Array(sx * sy * sz).fill(-1)
  const skyAt = (x: number, y: number, z: number) => {
    const ix = Math.min(sx - 1, Math.max(0, Math.floor((x - low[0]) / cellM)))
    const iy = Math.min(sy - 1, Math.max(0, Math.floor((y - low[1]) / cellM)))
    const iz = Math.min(sz - 1, Math.max(0, Math.floor((z - low[2]) / cellM)))
    const at = (iz * sy + iy) * sx + ix
    if (skyOfCell[at] < 0) {
      let sum = 0
      for (const d of skyDirections) sum += Math.exp(-depthAlong(x, y, z, d))
      skyOfCell[at] = sum / skyDirections.length
    }
    return skyOfCell[at]
  }
  const leafSun = new Float32Array(leafCount)
  const leafSky = new Float32Array(leafCount)
  for (let i = 0; i < leafCount; i++) {
    const o = i * leafStride
    leafSun[i] = Math.exp(-depthAlong(leaves[o], leaves[o + 1], leaves[o + 2], options.sun))
    leafSky[i] = skyAt(leaves[o], leaves[o + 1], leaves[o + 2])
  }
  const limbSun = new Float32Array(limbCount)
  const limbSky = new Float32Array(limbCount)
  for (let i = 0; i < limbCount; i++) {
    const o = i * limbStride
    const x = (limbs[o] + limbs[o + 4]) / 2
    const y = (limbs[o + 1] + limbs[o + 5]) / 2
    const z = (limbs[o + 2] + limbs[o + 6]) / 2
    limbSun[i] = Math.exp(-depthAlong(x, y, z, options.sun))
    limbSky[i] = skyAt(x, y, z)
  }
  return { leafSun, leafSky, limbSun, limbSky }
}
