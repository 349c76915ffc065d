// Clipped box: a ball of small leaves on short twigs, so even that its outline is nearly, but not quite, a circle.
import { addLeaf, addLimb, type Foliage } from './foliage.ts'
import { createStream, hash } from './hash.ts'
import type { Vector } from './vector.ts'

/** A ball of box, clipped: short twigs outwards, small leaves on each, and older leaves inside that close the gaps. */
export function growBall(
  foliage: Foliage,
  seed: number,
  centre: Vector,
  radiusM: number,
  leafM: number,
  twigs: number,
): void {
  for (let i = 0; i < twigs; i++) {
    const next = createStream(hash(seed, i, 7))
    const up = 1 - (2 * (i + next())) / twigs
    const ring = Math.sqrt(Math.max(0, 1 - up * up))
    const a = i * 2.39996 + 0.4 * next()
    const nx = Math.cos(a) * ring
    const nz = Math.sin(a) * ring
    const grown = radiusM * (1 + 0.035 * Math.sin(3 * nx + seed) * Math.cos(4 * up) + 0.03 * Math.sin(5 * nz + 2 * up))
    const r0 = grown * (0.86 - 0.1 * next())
    const r1 = grown * (0.97 + 0.07 * next() * next())
    const [cx, cy, cz] = centre
    if (i % 4 === 0)
      addLimb(
        foliage,
        cx + nx * r0,
        cy + up * r0,
        cz + nz * r0,
        0.0015,
        cx + nx * r1,
        cy + up * r1,
        cz + nz * r1,
        0.001,
      )
    for (let l = 0; l < 6; l++) {
      const r = r0 + ((r1 - r0) * (l + 1)) / 6
      const m = leafM * (0.7 + 0.5 * next())
      const ax = nx + 1.7 * (next() - 0.5)
      const ay = up + 1.7 * (next() - 0.5)
      const az = nz + 1.7 * (next() - 0.5)
      const k = m / (Math.hypot(ax, ay, az) + 1e-6)
      const px = cx + nx * r + 0.02 * (next() - 0.5)
      const py = cy + up * r + 0.02 * (next() - 0.5)
      const pz = cz + nz * r + 0.02 * (next() - 0.5)
      addLeaf(
        foliage,
        px,
        py,
        pz,
        ax * k,
        ay * k,
        az * k,
        nx + next() - 0.5,
        up + next() - 0.5,
        nz + next() - 0.5,
        m * 0.33,
        2 * next() - 1,
      )
    }
  }
  for (let i = 0; i < twigs / 3; i++) {
    const next = createStream(hash(seed, i, 9))
    const up = 1 - 2 * next()
    const ring = Math.sqrt(1 - up * up)
    const a = next() * 6.2832
    const r = radiusM * (0.62 + 0.2 * next())
    const m = leafM * 2.6
    const nx = Math.cos(a) * ring
    const nz = Math.sin(a) * ring
    addLeaf(
      foliage,
      centre[0] + nx * r,
      centre[1] + up * r,
      centre[2] + nz * r,
      (next() - 0.5) * m,
      (next() - 0.5) * m,
      (next() - 0.5) * m,
      nx,
      up,
      nz,
      m * 0.34,
      -1,
    )
  }
}
