// Shadow of foliage on a face: every leaf is slid along the sun onto the plane and stamped into a fine map in its own
// projected shape, as soft as its distance makes it. Close leaves leave leaf-shaped shadows, far ones a mottled half-light.
import type { Face } from './face.ts'
import { type Foliage, leafStride, limbStride } from './foliage.ts'
import { sunRadius } from './sun-casters.ts'
import { dot, type Vector } from './vector.ts'

export interface FaceShadow {
  /** Share of direct sun at (u, v) metres on the face. */
  at(u: number, v: number): number
}

/** Light that one leaf lets through: about a third in the near infrared. */
const leafPasses = 0.3

/** Casts `plants` on `face`. `cellM` = width of a map cell; the map covers the face. */
export function castOnFace(plants: readonly Foliage[], face: Face, sun: Vector, cellM: number): FaceShadow {
  const columns = Math.ceil(face.width / cellM) + 2
  const rows = Math.ceil(face.height / cellM) + 2
  const map = new Float32Array(columns * rows).fill(1)
  const toSun = dot(face.normal, sun)
  const sunU = dot(sun, face.across) / toSun
  const sunV = dot(sun, face.up) / toSun
  const { corner, across, up, normal } = face
  const place = { u: 0, v: 0, h: 0 }
  const slide = (x: number, y: number, z: number) => {
    const d: Vector = [x, y, z]
    place.h = dot(d, normal)
    place.u = dot(d, across) - sunU * place.h
    place.v = dot(d, up) - sunV * place.h
  }
  const stamp = (
    u: number,
    v: number,
    au: number,
    av: number,
    bu: number,
    bv: number,
    soft: number,
    passes: number,
  ) => {
    const s = Math.max(soft, 0.6 * cellM)
    const reachU = Math.abs(au) + Math.abs(bu) + s
    const reachV = Math.abs(av) + Math.abs(bv) + s
    const i0 = Math.max(0, Math.floor((u - reachU) / cellM))
    const i1 = Math.min(columns - 1, Math.ceil((u + reachU) / cellM))
    const j0 = Math.max(0, Math.floor((v - reachV) / cellM))
    const j1 = Math.min(rows - 1, Math.ceil((v + reachV) / cellM))
    if (i0 > i1 || j0 > j1) return
    const lengthA = Math.hypot(au, av) + s * 0.5
    const lengthB = Math.hypot(bu, bv) + s * 0.5
    const det = Math.abs(au * bv - av * bu)
    const peak = Math.min(1, (det + 1e-9) / (lengthA * lengthB))
    const edge = s / Math.min(lengthA, lengthB)
    const ax = au / (Math.hypot(au, av) + 1e-9) / lengthA
    const ay = av / (Math.hypot(au, av) + 1e-9) / lengthA
    for (let j = j0; j <= j1; j++) {
      for (let i = i0; i <= i1; i++) {
        const du = i * cellM - u
        const dv = j * cellM - v
        const a = du * ax + dv * ay
        const b = (du * -ay + dv * ax) * (lengthA / lengthB)
        const d = (1 - a * a - Math.abs(b)) / edge + 0.5
        if (d <= 0) continue
        map[j * columns + i] *= 1 - (d > 1 ? 1 : d) * peak * (1 - passes)
      }
    }
  }
  for (const { leaves, leafCount, limbs, limbCount } of plants) {
    for (let i = 0; i < leafCount; i++) {
      const o = i * leafStride
      const w = leaves[o + 9]
      const [ax, ay, az] = [leaves[o + 3] / 2, leaves[o + 4] / 2, leaves[o + 5] / 2]
      slide(leaves[o] + ax - corner[0], leaves[o + 1] + ay - corner[1], leaves[o + 2] + az - corner[2])
      const { u, v, h } = place
      if (h < 0.001) continue
      slide(ax, ay, az)
      const { u: au, v: av } = place
      const n: Vector = [leaves[o + 6], leaves[o + 7], leaves[o + 8]]
      const m = Math.hypot(ax, ay, az) || 1
      slide(((n[1] * az - n[2] * ay) * w) / m, ((n[2] * ax - n[0] * az) * w) / m, ((n[0] * ay - n[1] * ax) * w) / m)
      stamp(u, v, au, av, place.u, place.v, (h / toSun) * sunRadius, leafPasses)
    }
    for (let i = 0; i < limbCount; i++) {
      const o = i * limbStride
      slide(limbs[o] - corner[0], limbs[o + 1] - corner[1], limbs[o + 2] - corner[2])
      const { u, v, h } = place
      slide(limbs[o + 4] - corner[0], limbs[o + 5] - corner[1], limbs[o + 6] - corner[2])
      if (h < 0.001) continue
      const au = (place.u - u) / 2
      const av = (place.v - v) / 2
      const m = Math.hypot(au, av) || 1
      const r = limbs[o + 3]
      stamp(u + au, v + av, au * 1.3, av * 1.3, (-av / m) * r, (au / m) * r, (h / toSun) * sunRadius, 0)
    }
  }
  return {
    at(u, v) {
      const gu = u / cellM
      const gv = v / cellM
      const i = Math.floor(gu)
      const j = Math.floor(gv)
      if (i < 0 || j < 0 || i >= columns - 1 || j >= rows - 1) return 1
      const fu = gu - i
      const o = j * columns + i
      const low = map[o] + (map[o + 1] - map[o]) * fu
      return low + (map[o + columns] + (map[o + columns + 1] - map[o + columns]) * fu - low) * (gv - j)
    },
  }
}
