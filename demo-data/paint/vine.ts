// A climber on a wall that faces the camera: woody stems that wander upwards, fork and keep clear of doors and windows, and
// leaves on short stalks that overlap like shingles and stand off the wall.
import { addLeaf, addLimb, type Foliage } from './foliage.ts'
import { createStream, hash } from './hash.ts'
import { insideOpening, type Opening } from './opening.ts'

export interface VineOptions {
  readonly seed: number
  /** Where it is rooted, and the wall's distance. */
  readonly x: number
  readonly wallZ: number
  readonly topM: number
  readonly leafM: number
  /** Length all stems may have together, metres. */
  readonly stemM: number
  readonly openings: readonly Opening[]
  /** Where stems like to go sideways: −1 left … 1 right. */
  readonly lean: number
}

interface Tip {
  x: number
  y: number
  turn: number
  thick: number
  left: number
}

const stepM = 0.09

export function growVine(foliage: Foliage, options: VineOptions): void {
  const { seed, wallZ, topM, openings, lean } = options
  const next = createStream(hash(seed, 3))
  const tips: Tip[] = Array.from({ length: 6 }, (_, i) => ({
    x: options.x + 0.05 * (i - 2.5),
    y: 0,
    turn: lean * 0.3 + 0.2 * (i - 2.5),
    thick: 0.027 - 0.003 * i,
    left: 7,
  }))
  const keep = (x: number, y: number) => Math.max(...openings.map((o) => insideOpening(o, x, y) + 0.05))
  let spent = 0
  for (let index = 0; tips.length > 0 && spent < options.stemM; index++) {
    const tip = tips[index % tips.length]
    const homing = (lean * 0.5 - tip.turn) * 0.06
    tip.turn += (next() - 0.5) * 0.75 + homing
    let x = tip.x + Math.sin(tip.turn) * stepM
    let y = tip.y + Math.cos(tip.turn) * stepM
    for (let tries = 1; keep(x, y) > 0 && tries < 14; tries++) {
      const swing = tip.turn + (tries & 1 ? 1 : -1) * 0.22 * tries
      x = tip.x + Math.sin(swing) * stepM
      y = tip.y + Math.cos(swing) * stepM
    }
    const z = wallZ - 0.012 - tip.thick
    const done = y > topM + 0.3 * (next() - 0.5) || y < 0 || tip.left <= 0 || keep(x, y) > 0
    if (done) {
      tips.splice(index % tips.length, 1)
      continue
    }
    const thin = Math.max(0.0035, tip.thick * 0.976)
    addLimb(foliage, tip.x, tip.y, z, tip.thick, x, y, z + 0.004 * (next() - 0.5), thin)
    const leafy = Math.min(1, 0.15 + y * 0.9)
    const leaves = next() < leafy ? 4 + Math.floor(next() * 6) : 0
    for (let l = 0; l < leaves; l++) addVineLeaf(foliage, options, next, x, y, z)
    if (next() < 0.1 && tip.y > 0.5)
      tips.push({ x, y, turn: tip.turn + (next() < 0.5 ? -0.9 : 0.9), thick: thin * 0.7, left: tip.left * 0.75 })
    tip.x = x
    tip.y = y
    tip.thick = thin
    tip.left -= stepM
    spent += stepM
  }
}

function addVineLeaf(
  foliage: Foliage,
  options: VineOptions,
  next: () => number,
  x: number,
  y: number,
  z: number,
): void {
  const size = options.leafM * (0.5 + 0.75 * next())
  const off = 0.03 + 0.16 * next() * next()
  const px = x + 0.3 * (next() - 0.5)
  const py = y + 0.24 * (next() - 0.35)
  const pz = z - off
  if (options.openings.some((o) => insideOpening(o, px, py) > 0.06)) return
  addLimb(foliage, x, y, z, 0.0018, px, py, pz, 0.0012)
  const swing = (next() - 0.5) * 1.9
  const out = 0.25 + 0.35 * next()
  const m = size / Math.sqrt(1 + out * out)
  addLeaf(
    foliage,
    px,
    py,
    pz,
    Math.sin(swing) * m,
    -Math.cos(swing) * m,
    -out * m,
    0.9 * (next() - 0.5),
    0.5 + 0.5 * next(),
    -1,
    size * (0.4 + 0.08 * next()),
    2 * next() - 1,
  )
}
