// Branching by space colonisation (Runions, Lane & Prusinkiewicz 2007): points to be reached are scattered in the lobes of a
// crown, every branch tip grows towards the points nearest to it, and points that are reached go. Limb radii follow from
// the twigs they carry.
import { createStream, hash } from './hash.ts'
import type { Vector } from './vector.ts'

export interface CrownShape {
  readonly seed: number
  /** Foot of the trunk. */
  readonly foot: Vector
  readonly heightM: number
  /** Half the crown's width. */
  readonly radiusM: number
  /** Height of the lowest foliage. */
  readonly clearM: number
  /** Small lobes that make up the crown's outline; 34 for a broad tree. */
  readonly lobes: number
  readonly points: number
  /** Sideways metres of trunk per metre of height; none by default. */
  readonly lean?: number
}

/** Nodes in the order they grew (a parent comes before its children): positions in metres, parent index, limb radius in m. */
export interface Branches {
  readonly count: number
  readonly position: Float32Array
  readonly parent: Int32Array
  readonly radius: Float32Array
  /** Children per node. */
  readonly children: Uint8Array
}

const maxNodes = 9000
const pipeExponent = 2.08
const tipRadiusM = 0.0066

function scatterPoints(shape: CrownShape): Float32Array {
  const { foot, heightM, radiusM, clearM, lobes, points } = shape
  const middle = (heightM + clearM) / 2
  const halfHeight = (heightM - clearM) / 2
  const out = new Float32Array(points * 3)
  for (let i = 0; i < points; i++) {
    const lobe = i % lobes
    const own = createStream(hash(shape.seed, 11, lobe))
    const up = 1 - (2 * (lobe + 0.5)) / lobes
    const turn = lobe * 2.39996 + own() * 0.7
    const inward = lobe % 5 === 0 ? 0.36 : 0.68 + 0.16 * own()
    const ring = Math.sqrt(1 - up * up)
    const size = radiusM * (0.17 + 0.13 * own())
    const bulge = 1 - 0.22 * Math.max(0, up)
    const next = createStream(hash(shape.seed, 13, i))
    const z = 2 * next() - 1
    const angle = 2 * Math.PI * next()
    const r = Math.cbrt(next()) * size
    const flat = Math.sqrt(1 - z * z) * r
    out[i * 3] = foot[0] + Math.cos(turn) * ring * inward * radiusM * bulge + Math.cos(angle) * flat
    out[i * 3 + 1] = foot[1] + middle + up * (halfHeight - size * 0.7) * (0.35 + inward * 0.8) + z * r * 0.8
    out[i * 3 + 2] = foot[2] + Math.sin(turn) * ring * inward * radiusM * bulge + Math.sin(angle) * flat
  }
  return out
}

/** Grows the branches of one tree; about .3 s for 5000 points. */
export function growBranches(shape: CrownShape): Branches {
  const { foot, heightM, clearM } = shape
  const step = heightM * 0.02
  const kill = (1.5 * step) ** 2
  const reach = (9 * step) ** 2
  const goals = scatterPoints(shape)
  const goalCount = shape.points
  const nearest = new Int32Array(goalCount)
  const distance = new Float32Array(goalCount).fill(Infinity)
  const position = new Float32Array(maxNodes * 3)
  const parent = new Int32Array(maxNodes)
  const children = new Uint8Array(maxNodes)
  let count = 0
  let alive = Uint32Array.from({ length: goalCount }, (_, i) => i)
  const chance = createStream(hash(shape.seed, 17))

  const addNode = (x: number, y: number, z: number, from: number) => {
    position[count * 3] = x
    position[count * 3 + 1] = y
    position[count * 3 + 2] = z
    parent[count] = from
    if (from >= 0) children[from]++
    for (const i of alive) {
      const dx = goals[i * 3] - x
      const dy = goals[i * 3 + 1] - y
      const dz = goals[i * 3 + 2] - z
      const d = dx * dx + dy * dy + dz * dz
      if (d < distance[i]) {
        distance[i] = d
        nearest[i] = count
      }
    }
    count++
  }

  const steps = Math.ceil((clearM * 1.05) / step)
  for (let i = 0; i <= steps; i++) {
    addNode(foot[0] + (shape.lean ?? 0) * i * step, foot[1] + i * step, foot[2], i - 1)
  }
  const pull = new Float32Array(maxNodes * 3)
  for (let round = 0; round < 260; round++) {
    if (count >= maxNodes - 1) break
    pull.fill(0, 0, count * 3)
    const pulled = new Set<number>()
    for (const i of alive) {
      if (distance[i] > reach) continue
      const n = nearest[i]
      const d = Math.sqrt(distance[i]) + 1e-9
      for (let a = 0; a < 3; a++) pull[n * 3 + a] += (goals[i * 3 + a] - position[n * 3 + a]) / d
      pulled.add(n)
    }
    if (pulled.size === 0) {
      const top = count - 1
      if (position[top * 3 + 1] > foot[1] + heightM * 0.8) break
      addNode(position[top * 3], position[top * 3 + 1] + step, position[top * 3 + 2], top)
      continue
    }
    for (const n of pulled) {
      if (count >= maxNodes) break
      if (children[n] >= 3) continue
      const px = pull[n * 3] + (chance() - 0.5) * 0.9
      const py = pull[n * 3 + 1] + (chance() - 0.42) * 0.9
      const pz = pull[n * 3 + 2] + (chance() - 0.5) * 0.9
      const k = step / (Math.sqrt(px * px + py * py + pz * pz) + 1e-9)
      addNode(position[n * 3] + px * k, position[n * 3 + 1] + py * k, position[n * 3 + 2] + pz * k, n)
    }
    alive = alive.filter((i) => distance[i] > kill)
  }
  return { count, position, parent, children, radius: limbRadii(count, parent, children) }
}

function limbRadii(count: number, parent: Int32Array, children: Uint8Array): Float32Array {
  const carried = new Float64Array(count)
  for (let i = count - 1; i >= 0; i--) {
    if (children[i] === 0) carried[i] = tipRadiusM ** pipeExponent
    if (parent[i] >= 0) carried[parent[i]] += carried[i]
  }
  return Float32Array.from(carried, (v) => v ** (1 / pipeExponent))
}
