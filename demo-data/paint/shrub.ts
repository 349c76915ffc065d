// Shrubs and pot plants near enough to see how they are built: stems from one root, side shoots, leaves in turn around each
// shoot, flowers at shoot ends where wanted. Leaves carry kind 0, flowers kind 1.
import { addLeaf, addLimb, type Foliage } from './foliage.ts'
import { createStream, hash } from './hash.ts'
import type { Vector } from './vector.ts'

export interface ShrubOptions {
  readonly seed: number
  readonly foot: Vector
  readonly heightM: number
  readonly widthM: number
  readonly stems: number
  readonly leafM: number
  /** Half-width of a leaf as a share of its length. */
  readonly slim: number
  /** Side shoots per stem and leaves per shoot. */
  readonly shoots: number
  readonly leavesPerShoot: number
  /** Share of shoots that end in a flower head, and its width in metres. */
  readonly flowering?: number
  readonly flowerM?: number
}

export function growShrub(foliage: Foliage, options: ShrubOptions): void {
  const { seed, foot, heightM, widthM, stems, shoots } = options
  for (let s = 0; s < stems; s++) {
    const next = createStream(hash(seed, s, 1))
    const turn = s * 2.39996 + next() * 0.6
    const out = Math.sqrt((s + 0.5) / stems)
    const reachX = Math.sin(turn) * out * (widthM / 2) * (0.8 + 0.3 * next())
    const reachZ = Math.cos(turn) * out * (widthM / 2) * (0.8 + 0.3 * next())
    const reachY = heightM * (0.72 + 0.33 * next()) * Math.sqrt(1 - 0.72 * out * out)
    const steps = 7
    const thick = 0.0035 + heightM * 0.0055
    let [px, py, pz] = foot
    for (let i = 1; i <= steps; i++) {
      const t = i / steps
      const x = foot[0] + reachX * t * (0.45 + 0.55 * t) + 0.02 * heightM * (next() - 0.5)
      const y = foot[1] + reachY * (t - 0.12 * t * t * out)
      const z = foot[2] + reachZ * t * (0.45 + 0.55 * t) + 0.02 * heightM * (next() - 0.5)
      addLimb(foliage, px, py, pz, thick * (1.1 - 0.8 * (t - 1 / steps)), x, y, z, thick * (1.1 - 0.8 * t))
      px = x
      py = y
      pz = z
      if (t < 0.25) continue
      const here = Math.round((shoots / steps) * 1.4)
      for (let k = 0; k < here; k++) {
        const a = next() * 6.2832
        const lift = 0.2 + 0.9 * next()
        const length = (0.07 + 0.15 * (1 - 0.5 * t)) * Math.sqrt(heightM * widthM) * (0.7 + 0.6 * next())
        growShoot(
          foliage,
          options,
          next,
          px,
          py,
          pz,
          Math.sin(a) + 1.4 * (reachX / widthM),
          lift,
          Math.cos(a) + 1.4 * (reachZ / widthM),
          length,
        )
      }
    }
    growShoot(foliage, options, next, px, py, pz, reachX / widthM, 1, reachZ / widthM, 0.1 * heightM)
  }
}

function growShoot(
  foliage: Foliage,
  options: ShrubOptions,
  next: () => number,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
  lengthM: number,
): void {
  const k = lengthM / (Math.hypot(dx, dy, dz) + 1e-6)
  const ex = dx * k
  const ey = dy * k
  const ez = dz * k
  const thick = 0.0016 + 0.003 * lengthM
  addLimb(foliage, x, y, z, thick, x + ex, y + ey, z + ez, thick * 0.5)
  const { leafM, slim, leavesPerShoot, flowering = 0, flowerM = 0.05 } = options
  const tint = 2 * next() - 1
  for (let i = 0; i < leavesPerShoot; i++) {
    const t = (i + 0.5) / leavesPerShoot
    const a = i * 2.39996 + tint
    const size = leafM * (0.6 + 0.55 * next()) * (1.15 - 0.4 * t)
    let ax = Math.sin(a) + 0.7 * (ex / lengthM)
    let ay = 0.25 + 0.7 * (ey / lengthM) - 0.75 * next()
    let az = Math.cos(a) + 0.7 * (ez / lengthM)
    const m = size / (Math.hypot(ax, ay, az) + 1e-6)
    ax *= m
    ay *= m
    az *= m
    const nx = 0.8 * (next() - 0.5)
    const nz = 0.8 * (next() - 0.5)
    addLeaf(
      foliage,
      x + ex * t,
      y + ey * t,
      z + ez * t,
      ax,
      ay,
      az,
      nx,
      1,
      nz,
      size * slim,
      0.5 * tint + 0.5 * (2 * next() - 1),
    )
  }
  if (next() < flowering) addHead(foliage, next, x + ex, y + ey, z + ez, flowerM)
}

/** A rounded head of many small petals. */
function addHead(foliage: Foliage, next: () => number, x: number, y: number, z: number, widthM: number): void {
  const petals = 26
  const petal = widthM * 0.34
  for (let i = 0; i < petals; i++) {
    const up = 1 - (1.5 * (i + 0.5)) / petals
    const ring = Math.sqrt(1 - up * up)
    const a = i * 2.39996
    const nx = Math.sin(a) * ring
    const nz = Math.cos(a) * ring
    const b = next() * 6.2832
    addLeaf(
      foliage,
      x + nx * widthM * 0.42,
      y + up * widthM * 0.36,
      z + nz * widthM * 0.42,
      Math.sin(b) * petal,
      0.3 * petal * (next() - 0.5),
      Math.cos(b) * petal,
      nx,
      up + 0.1,
      nz,
      petal * 0.42,
      2 * next() - 1,
      1,
    )
  }
}
