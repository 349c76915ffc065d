// Shadows of flat things on flat things: a ray to the sun against rectangles, with the half-shadow that the sun's width
// makes. Every face first sorts out which rectangles can shade which part of it.
import type { Face } from './face.ts'
import { along, dot, type Vector } from './vector.ts'

/** Angular radius of the sun in radians (.266°, almanac value, from memory). */
export const sunRadius = 0.00465

/** Share of direct sun, 0…1, that passes `casters` on its way to (x, y, z). */
export function sunPast(casters: readonly Face[], sun: Vector, x: number, y: number, z: number): number {
  let share = 1
  for (const c of casters) {
    const { corner, across, up, normal } = c
    const facing = normal[0] * sun[0] + normal[1] * sun[1] + normal[2] * sun[2]
    const ox = corner[0] - x
    const oy = corner[1] - y
    const oz = corner[2] - z
    const t = (normal[0] * ox + normal[1] * oy + normal[2] * oz) / facing
    if (!(t > 0.002)) continue
    const qx = sun[0] * t - ox
    const qy = sun[1] * t - oy
    const qz = sun[2] * t - oz
    const u = qx * across[0] + qy * across[1] + qz * across[2]
    const v = qx * up[0] + qy * up[1] + qz * up[2]
    const inside = Math.min(u, c.width - u, v, c.height - v)
    const soft = t * sunRadius + 0.0015
    if (inside <= -soft) continue
    if (inside >= soft) return 0
    const k = (inside + soft) / (2 * soft)
    share *= 1 - k * k * (3 - 2 * k)
  }
  return share
}

interface Reach {
  readonly caster: Face
  readonly u0: number
  readonly u1: number
  readonly v0: number
  readonly v1: number
}

/** Those of `casters` whose shadow can fall on `face`, and the part of the face where it can. */
function reachOf(face: Face, casters: readonly Face[], sun: Vector): Reach[] {
  const toSun = dot(face.normal, sun)
  if (toSun <= 0) return []
  return casters.flatMap((c) => {
    if (c === face || Math.abs(dot(c.normal, sun)) < 0.02) return []
    const a = along(c.corner, c.across, c.width)
    const relative = [c.corner, a, along(a, c.up, c.height), along(c.corner, c.up, c.height)].map((p): Vector => [
      p[0] - face.corner[0],
      p[1] - face.corner[1],
      p[2] - face.corner[2],
    ])
    const heights = relative.map((p) => dot(face.normal, p))
    if (Math.max(...heights) <= 0.001) return []
    const onFace = relative.map((p, i) => along(p, sun, -heights[i] / toSun))
    const us = onFace.map((p) => dot(p, face.across))
    const vs = onFace.map((p) => dot(p, face.up))
    const soft = (Math.max(...heights) / toSun) * 2 * sunRadius + 0.01
    const reach = {
      caster: c,
      u0: Math.min(...us) - soft,
      u1: Math.max(...us) + soft,
      v0: Math.min(...vs) - soft,
      v1: Math.max(...vs) + soft,
    }
    return reach.u1 > 0 && reach.u0 < face.width && reach.v1 > 0 && reach.v0 < face.height ? [reach] : []
  })
}

const cellM = 0.3

/** Share of direct sun on `face` at (u, v) = (x, y, z): looks only at casters that matter in that part of the face. */
export function createFaceSun(
  face: Face,
  casters: readonly Face[],
  sun: Vector,
): (u: number, v: number, x: number, y: number, z: number) => number {
  const columns = Math.ceil(face.width / cellM)
  const rows = Math.ceil(face.height / cellM)
  const cells: Face[][] = Array.from({ length: columns * rows }, () => [])
  for (const { caster, u0, u1, v0, v1 } of reachOf(face, casters, sun)) {
    for (let j = Math.max(0, Math.floor(v0 / cellM)); j <= Math.min(rows - 1, Math.floor(v1 / cellM)); j++) {
      for (let i = Math.max(0, Math.floor(u0 / cellM)); i <= Math.min(columns - 1, Math.floor(u1 / cellM)); i++)
        cells[j * columns + i].push(caster)
    }
  }
  return (u, v, x, y, z) => {
    const i = Math.min(columns - 1, Math.max(0, Math.floor(u / cellM)))
    const j = Math.min(rows - 1, Math.max(0, Math.floor(v / cellM)))
    const list = cells[j * columns + i]
    return list.length === 0 ? 1 : sunPast(list, sun, x, y, z)
  }
}
