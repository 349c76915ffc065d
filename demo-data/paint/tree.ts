// A broad-leaved tree as foliage in space: limbs from `branches.ts`, and on every thin limb a few twigs with leaves set
// alternately along them, so that at one to one the crown is twigs and leaves and not a cloud of flakes.
import { type CrownShape, growBranches } from './branches.ts'
import { addLeaf, addLimb, type Foliage } from './foliage.ts'
import { createStream, hash } from './hash.ts'

export interface TreeOptions extends CrownShape {
  readonly leafM: number
  /** Leaves per twig and twigs per thin limb: 8 and 3 give about 90,000 leaves for 5,000 points. */
  readonly leavesPerTwig: number
  readonly twigs: number
  /** Share of leaves 0…1: 1 is full summer. */
  readonly leafiness?: number
  readonly bareTrunk?: boolean
}

/** Limbs thinner than this carry leaves. */
const thinM = 0.022

/**
 * Adds the tree to `foliage`. Leaves have kind 0 and a tint of their own. Returns the trunk's radius in m at the height
 * `clearM`; with `bareTrunk` the trunk below is left to the scene, which may give it bark.
 */
export function growTree(foliage: Foliage, options: TreeOptions): number {
  const tree = growBranches(options)
  const { position: p, parent, radius } = tree
  const [footX, footY, footZ] = options.foot
  const flare = 1.5
  let trunkRadiusM = radius[0]
  for (let i = 1; i < tree.count; i++) {
    const q = parent[i]
    if (q === i - 1 && p[i * 3 + 1] < footY + options.clearM) {
      trunkRadiusM = radius[i]
      if (options.bareTrunk) continue
    }
    const low = 1 + flare * 0.35 * Math.exp(-(p[q * 3 + 1] - footY) / (options.heightM * 0.035))
    addLimb(
      foliage,
      p[q * 3],
      p[q * 3 + 1],
      p[q * 3 + 2],
      Math.min(radius[q], radius[i] * 1.3) * low,
      p[i * 3],
      p[i * 3 + 1],
      p[i * 3 + 2],
      radius[i],
    )
  }
  const middle = footY + (options.heightM + options.clearM) / 2
  for (let i = 1; i < tree.count; i++) {
    if (radius[i] > thinM) continue
    const outX = p[i * 3] - footX
    const outY = (p[i * 3 + 1] - middle) * 0.8
    const outZ = p[i * 3 + 2] - footZ
    const far = Math.hypot(outX, outY, outZ) + 0.1
    const next = createStream(hash(options.seed, 23, i))
    const tint = 2 * next() - 1
    for (let t = 0; t < options.twigs; t++) {
      const angle = next() * 2 * Math.PI
      const rise = next() * 1.4 - 0.6
      const length = options.leafM * (3 + 2.2 * next())
      let dx = Math.cos(angle) + (0.9 * outX) / far
      let dy = rise + (0.7 * outY) / far
      let dz = Math.sin(angle) + (0.9 * outZ) / far
      const d = length / (Math.hypot(dx, dy, dz) + 1e-6)
      dx *= d
      dy *= d
      dz *= d
      growTwig(foliage, options, p[i * 3], p[i * 3 + 1], p[i * 3 + 2], dx, dy, dz, tint, next)
    }
  }
  return trunkRadiusM
}

function growTwig(
  foliage: Foliage,
  options: TreeOptions,
  x: number,
  y: number,
  z: number,
  dx: number,
  dy: number,
  dz: number,
  tint: number,
  next: () => number,
): void {
  addLimb(foliage, x, y, z, 0.005, x + dx, y + dy, z + dz, 0.002)
  const n = options.leavesPerTwig
  const turn = next() * 6.28
  for (let k = 0; k < n; k++) {
    const keep = next() < (options.leafiness ?? 1)
    const s = (k + 0.6 + 0.5 * next()) / n
    const size = options.leafM * (0.65 + 0.6 * next())
    const swing = turn + k * 2.6
    const ax = dx * 0.9 + Math.cos(swing) * 0.3 * options.leafM * 4
    const ay = dy * 0.7 - 0.9 * options.leafM * (0.4 + next())
    const az = dz * 0.9 + Math.sin(swing) * 0.3 * options.leafM * 4
    const m = size / (Math.hypot(ax, ay, az) + 1e-6)
    const nx = 1.1 * (next() - 0.5)
    const nz = 1.1 * (next() - 0.5)
    const ny = 0.55 + 0.5 * next()
    const own = tint * 0.6 + 0.4 * (2 * next() - 1)
    if (keep) addLeaf(foliage, x + dx * s, y + dy * s, z + dz * s, ax * m, ay * m, az * m, nx, ny, nz, size * 0.38, own)
  }
}
