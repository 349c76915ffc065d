// Reeds standing in water: upright stems, long leaves set alternately and blown to one side, drooping plumes.
// A bed shades itself: light is worked out from how much of the bed lies towards the sun, so stems darken downwards.
// Ground truth: `grass`, `dryGrass`, `driedLeaf`.
import type { Palette } from '../light/triplets.ts'
import { createBrush, lightMix } from './brush.ts'
import { type Camera, columnOf, rowOf } from './camera.ts'
import type { Band } from './canvas.ts'
import { createStream, hash } from './hash.ts'
import { noise2 } from './noise.ts'
import { drawRibbon, ribbonStride } from './ribbon.ts'
import { drawLeaf } from './shapes.ts'
import type { Vector } from './vector.ts'

export interface ReedBed {
  readonly seed: number
  readonly perM2: number
  readonly heightM: readonly [number, number]
  readonly x0: number
  readonly x1: number
  readonly z0: number
  readonly z1: number
  /** Density 0…1 at X, Z. */
  cover(x: number, z: number): number
}

/** A reed: points x y z along each strand, from the water up; strands are the stem, then leaves, then plume fibres. */
interface Reed {
  readonly x: number
  readonly z: number
  readonly heightM: number
  readonly strands: readonly Strand[]
}

interface Strand {
  readonly points: Float32Array
  readonly widthM: number
  readonly kind: 'stem' | 'leaf' | 'plume'
  readonly tint: number
}

const stemParts = 6
const leafParts = 11

function growLeaf(x: number, y: number, z: number, lengthM: number, lean: Vector, next: () => number): Strand {
  const turn = next() * 6.283
  const side = [0.85 * Math.cos(turn) + 0.75, 0, 0.8 * Math.sin(turn)]
  const n = Math.hypot(side[0], side[2])
  const points = new Float32Array((leafParts + 1) * 3)
  const rise = 0.35 + 0.25 * next()
  const droop = 0.6 + 1.3 * next()
  let [px, py, pz] = [x, y, z]
  for (let i = 0; i <= leafParts; i++) {
    points.set([px, py, pz], i * 3)
    const t = i / leafParts
    const angle = rise + droop * t * t * 1.2
    const step = lengthM / leafParts
    px += step * ((side[0] / n) * Math.sin(angle) + lean[0] * 0.3)
    pz += step * ((side[2] / n) * Math.sin(angle))
    py += step * Math.cos(angle)
  }
  return { points, widthM: 0.006 + 0.006 * next(), kind: 'leaf', tint: next() }
}

function growReed(x: number, z: number, heightM: number, next: () => number): Reed {
  const lean: Vector = [0.02 + 0.1 * next(), 0, 0.1 * (next() - 0.5)]
  const at = (t: number): Vector => {
    const bend = t * t * heightM
    return [x + lean[0] * bend, t * heightM, z + lean[2] * bend]
  }
  const stem = new Float32Array((stemParts + 1) * 3)
  for (let i = 0; i <= stemParts; i++) stem.set(at(i / stemParts), i * 3)
  const strands: Strand[] = [{ points: stem, widthM: 0.0035 + 0.001 * next(), kind: 'stem', tint: next() }]
  const leaves = 6 + Math.floor(4 * next())
  for (let i = 0; i < leaves; i++) {
    const [lx, ly, lz] = at(0.22 + (0.72 * (i + 0.6 * next())) / leaves)
    strands.push(growLeaf(lx, ly, lz, (0.3 + 0.28 * next()) * Math.min(1, heightM / 1.6), lean, next))
  }
  if (next() < 0.6) {
    const [tx, ty, tz] = at(1)
    const size = 0.16 + 0.12 * next()
    const fibres = 84
    for (let i = 0; i < fibres; i++) {
      const t = i / fibres
      const y = ty - size * 0.55 + size * t
      const out = size * (0.16 + 0.34 * (1 - t)) * (0.4 + 0.7 * next())
      const turn = next() * 6.283
      const fx = tx + 0.05 * t * size
      const dx = out * (0.6 * Math.cos(turn) + 0.55)
      const dz = out * 0.7 * Math.sin(turn)
      const points = Float32Array.from([fx, y, tz, fx + dx, y + out * (0.75 - 0.5 * next()), tz + dz])
      strands.push({ points, widthM: 0.0016 + 0.002 * next(), kind: 'plume', tint: next() })
    }
  }
  return { x, z, heightM, strands }
}

/** Sows a bed, far to near. */
export function growReeds(bed: ReedBed): Reed[] {
  const side = 1 / Math.sqrt(bed.perM2)
  const reeds: Reed[] = []
  for (let j = 0, z = bed.z0; z < bed.z1; j++, z += side) {
    for (let i = 0, x = bed.x0; x < bed.x1; i++, x += side) {
      const next = createStream(hash(bed.seed, i, j))
      const px = x + side * next()
      const pz = z + side * next()
      const cover = bed.cover(px, pz)
      if (next() >= cover) continue
      const height = bed.heightM[0] + (bed.heightM[1] - bed.heightM[0]) * next()
      reeds.push(
        growReed(px, pz, height * (0.75 + 0.25 * cover) * (1 + 0.12 * noise2(px / 1.3, pz / 1.3, bed.seed)), next),
      )
    }
  }
  return reeds.sort((a, b) => b.z - a.z)
}

/** Paints reeds standing in `bed`. */
export function paintReeds(
  band: Band,
  camera: Camera,
  palette: Palette,
  reeds: readonly Reed[],
  bed: ReedBed,
  sun: Vector,
): void {
  const brush = createBrush()
  const green = palette.of('grass')
  const dry = palette.of('dryGrass')
  const brown = palette.of('driedLeaf')
  const flat = Math.hypot(sun[0], sun[2])
  const f = camera.focalPx
  const path = new Float64Array(ribbonStride * (leafParts + 1))
  for (const reed of reeds) {
    if (rowOf(camera, reed.heightM * 1.15, reed.z) > band.y1 || rowOf(camera, -0.1, reed.z) < band.y0) continue
    const thick = bed.cover(reed.x + sun[0] * 0.8, reed.z + sun[2] * 0.8)
    const own = 0.75 + 0.25 * noise2(reed.x / 0.6, reed.z / 0.6, bed.seed + 3)
    for (const { points, widthM, kind, tint } of reed.strands) {
      const count = points.length / 3
      let nearest = Infinity
      for (let i = 0; i < count; i++) {
        const x = points[i * 3]
        const y = points[i * 3 + 1]
        const z = points[i * 3 + 2]
        nearest = Math.min(nearest, z)
        const t = i / (count - 1)
        const below = Math.max(0, reed.heightM - y)
        const reached = Math.exp((-0.75 * thick * below * flat) / sun[1]) * own
        const open = 0.12 + 0.75 * Math.exp(-0.55 * thick * below)
        const o = i * ribbonStride
        path[o] = columnOf(camera, x, z)
        path[o + 1] = rowOf(camera, y, z)
        path[o + 2] =
          (f * widthM * (kind === 'stem' ? 1.15 - 0.5 * t : Math.min(1, 0.45 + 2.4 * t) * (1 - t ** 1.6))) / z
        path[o + 3] = kind === 'plume' ? 1 : 0.22 * open + 0.78 * reached * (0.6 + 0.4 * Math.sin(tint * 40 + t * 2.4))
      }
      if (nearest < 0.5) continue
      if (kind === 'plume') {
        lightMix(brush, brown, dry, 0.5 * tint, (0.2 + 0.75 * tint) * own, 0.7)
        drawLeaf(band, path[0], path[1], path[4] - path[0], path[5] - path[1], (f * widthM) / nearest, 1, brush)
      } else if (kind === 'stem') {
        lightMix(brush, green, dry, 0.35 + 0.4 * tint, 0.75, 0.7)
        drawRibbon(band, path, count, 0.35 * Math.sign(-sun[0]), brush)
      } else {
        lightMix(brush, green, dry, 0.5 * tint * tint, 0.9, 0.9, 0, 0.1)
        drawRibbon(band, path, count, 0.5 * (tint - 0.5), brush)
      }
    }
  }
}
