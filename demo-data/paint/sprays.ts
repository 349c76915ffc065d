// A leafy side branch as beeches and hazels bear them: a drooping axis, twigs left and right in one flat layer, leaves
// alternating along each twig. Every leaf hangs on a twig; at a distance fewer, larger leaves do the same work.
import { type Foliage, addLeaf, addLimb } from './foliage.ts'
import { createStream } from './hash.ts'

export interface Spray {
  readonly x: number
  readonly y: number
  readonly z: number
  /** Direction seen from above, radians: 0 = away from the camera, π/2 = right. */
  readonly heading: number
  readonly lengthM: number
  /** Slope at the base, upwards positive; the branch bends down towards its tip. */
  readonly rise: number
  readonly leafM: number
  /** Twigs are this far apart, metres. */
  readonly spacingM: number
  readonly seed: number
  readonly kind?: number
  /** Too far away for the thinnest twigs to be seen. */
  readonly bare?: boolean
}

/** Adds a bough: a bare lower part, then leafy sprays left and right and one at its end. */
export function addBough(foliage: Foliage, bough: Spray): void {
  const next = createStream(bough.seed)
  const nodes = Math.max(3, Math.round(bough.lengthM / 0.45))
  const step = bough.lengthM / nodes
  let { x, y, z, heading } = bough
  let slope = bough.rise
  const thick = 0.006 + bough.lengthM * 0.0065
  let side = next() < 0.5 ? -1 : 1
  for (let n = 0; n < nodes; n++) {
    const t = n / nodes
    heading += (next() - 0.5) * 0.3
    slope += -0.5 / nodes + (next() - 0.5) * 0.22
    const flat = step / Math.sqrt(1 + slope * slope)
    const x1 = x + Math.sin(heading) * flat
    const y1 = y + slope * flat
    const z1 = z + Math.cos(heading) * flat
    addLimb(foliage, x, y, z, thick * (1 - 0.75 * t), x1, y1, z1, thick * (1 - 0.75 * (t + 1 / nodes)))
    const branch = { ...bough, x: x1, y: y1, z: z1, seed: Math.floor(next() * 1e9) }
    const lengthM = bough.lengthM * (0.5 - 0.3 * t) * (0.7 + 0.6 * next())
    if (n === nodes - 1) addSpray(foliage, { ...branch, heading, lengthM, rise: slope })
    else if (t > 0.15)
      addSpray(foliage, { ...branch, heading: heading + side * (0.6 + 0.4 * next()), lengthM, rise: slope + 0.15 })
    side = -side
    x = x1
    y = y1
    z = z1
  }
}

/** Adds one branch with its twigs and leaves. */
export function addSpray(foliage: Foliage, spray: Spray): void {
  const next = createStream(spray.seed)
  const { lengthM, spacingM } = spray
  const nodes = Math.max(4, Math.round(lengthM / spacingM))
  const step = lengthM / nodes
  let { x, y, z } = spray
  let heading = spray.heading
  let slope = spray.rise
  const thick = 0.004 + lengthM * 0.0055
  let side = next() < 0.5 ? -1 : 1
  for (let n = 0; n < nodes; n++) {
    const t = n / nodes
    heading += (next() - 0.5) * 0.22
    slope += -0.75 / nodes + (next() - 0.5) * 0.16
    const flat = step / Math.sqrt(1 + slope * slope)
    const x1 = x + Math.sin(heading) * flat
    const y1 = y + slope * flat
    const z1 = z + Math.cos(heading) * flat
    addLimb(foliage, x, y, z, thick * (1 - 0.85 * t), x1, y1, z1, thick * (1 - 0.85 * (t + 1 / nodes)))
    if (t > 0.12) {
      const reach = (0.1 + lengthM * (0.36 - 0.28 * t)) * (0.6 + 0.7 * next())
      addTwig(foliage, next, x1, y1, z1, heading + side * (0.75 + 0.4 * next()), slope * 0.6, reach, spray)
    }
    side = -side
    x = x1
    y = y1
    z = z1
  }
  addTwig(foliage, next, x, y, z, heading, slope, lengthM * 0.16, spray)
}

function addTwig(
  foliage: Foliage,
  next: () => number,
  x: number,
  y: number,
  z: number,
  heading: number,
  slope: number,
  reachM: number,
  { leafM, kind = 0, bare = false }: Spray,
): void {
  const count = Math.max(2, Math.round(reachM / (leafM * 0.6)))
  const step = reachM / count
  let dir = heading
  let fall = slope
  let side = next() < 0.5 ? -1 : 1
  for (let n = 0; n < count; n++) {
    dir += (next() - 0.5) * 0.5
    fall -= 0.05 + (next() - 0.5) * 0.3
    const x1 = x + Math.sin(dir) * step
    const y1 = y + fall * step
    const z1 = z + Math.cos(dir) * step
    if (!bare) addLimb(foliage, x, y, z, 0.0022 - 0.0012 * (n / count), x1, y1, z1, 0.0022 - 0.0012 * ((n + 1) / count))
    const last = n === count - 1
    const turn = last ? dir + (next() - 0.5) * 0.5 : dir + side * (0.7 + 0.5 * next())
    const long = leafM * (0.65 + 0.55 * next())
    const droop = -0.15 - 0.55 * next()
    addLeaf(
      foliage,
      x1,
      y1,
      z1,
      Math.sin(turn) * long,
      droop * long,
      Math.cos(turn) * long,
      (next() - 0.5) * 1.1,
      1,
      (next() - 0.5) * 1.1,
      long * (0.27 + 0.07 * next()),
      next() * 2 - 1,
      kind,
    )
    side = -side
    x = x1
    y = y1
    z = z1
  }
}
