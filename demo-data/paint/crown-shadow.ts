// Shadow of foliage on level ground: every leaf is slid along the sun to the ground and counted in a small map, which is
// softened as the sun's width softens it and turned into a share of sunlight that passes.
import { type Foliage, leafStride, limbStride } from './foliage.ts'
import type { Vector } from './vector.ts'

export interface GroundShadow {
  /** Share of direct sun 0…1 that reaches the ground at X, Z. */
  sunAt(x: number, z: number): number
}

const side = 320

function blur(map: Float32Array, radius: number): Float32Array {
  const out = new Float32Array(map.length)
  const width = 2 * radius + 1
  for (let line = 0; line < side; line++) {
    let sum = 0
    for (let i = -radius; i < side + radius; i++) {
      if (i + radius < side) sum += map[line * side + i + radius]
      if (i - radius - 1 >= 0) sum -= map[line * side + i - radius - 1]
      if (i >= 0 && i < side) out[i * side + line] = sum / width
    }
  }
  return out
}

/** `sun` points to the sun. About 10 ms per 100,000 leaves. */
export function castFoliage(foliage: Foliage, sun: Vector): GroundShadow {
  const { leaves, leafCount, limbs, limbCount } = foliage
  const slide = (y: number) => y / sun[1]
  let x0 = Infinity
  let x1 = -Infinity
  let z0 = Infinity
  let z1 = -Infinity
  const marks = new Float32Array((leafCount + limbCount) * 3)
  const mark = (i: number, x: number, y: number, z: number, area: number) => {
    const gx = x - sun[0] * slide(y)
    const gz = z - sun[2] * slide(y)
    marks.set([gx, gz, area], i * 3)
    x0 = Math.min(x0, gx)
    x1 = Math.max(x1, gx)
    z0 = Math.min(z0, gz)
    z1 = Math.max(z1, gz)
  }
  for (let i = 0; i < leafCount; i++) {
    const o = i * leafStride
    const length = Math.hypot(leaves[o + 3], leaves[o + 4], leaves[o + 5])
    mark(i, leaves[o], leaves[o + 1], leaves[o + 2], length * leaves[o + 9] * 0.7)
  }
  for (let i = 0; i < limbCount; i++) {
    const o = i * limbStride
    const length = Math.hypot(limbs[o + 4] - limbs[o], limbs[o + 5] - limbs[o + 1], limbs[o + 6] - limbs[o + 2])
    mark(leafCount + i, limbs[o], limbs[o + 1], limbs[o + 2], length * limbs[o + 3] * 2)
  }
  const margin = 1
  const spanX = x1 - x0 + 2 * margin
  const spanZ = z1 - z0 + 2 * margin
  const cellArea = (spanX / side) * (spanZ / side) * sun[1]
  const counts = new Float32Array(side * side)
  for (let i = 0; i < marks.length; i += 3) {
    const cx = Math.floor(((marks[i] - x0 + margin) / spanX) * side)
    const cz = Math.floor(((marks[i + 1] - z0 + margin) / spanZ) * side)
    if (cx >= 0 && cz >= 0 && cx < side && cz < side) counts[cz * side + cx] += marks[i + 2] / cellArea
  }
  const map = blur(blur(counts, 1), 1)
  const share = Float32Array.from(map, (depth) => Math.exp(-depth))
  return {
    sunAt(x, z) {
      const gx = ((x - x0 + margin) / spanX) * side - 0.5
      const gz = ((z - z0 + margin) / spanZ) * side - 0.5
      const i = Math.floor(gx)
      const j = Math.floor(gz)
      if (i < 0 || j < 0 || i >= side - 1 || j >= side - 1) return 1
      const u = gx - i
      const v = gz - j
      const p = j * side + i
      const near = share[p] + (share[p + 1] - share[p]) * u
      return near + (share[p + side] + (share[p + side + 1] - share[p + side]) * u - near) * v
    },
  }
}
