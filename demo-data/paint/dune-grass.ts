// Marram-like tufts on sand: a sheaf of arching blades each, and the shadow that every single blade throws on the ground.
// In low light the shadows are many times longer than the grass is tall, so they get maps of their own, finer than the
// landscape's. Heights and counts are tuned by eye. Ground truth: `dryGrass`, `grass`.
import type { Palette } from '../light/triplets.ts'
import { createBrush, lightMix } from './brush.ts'
import { type Camera, columnOf, rowOf } from './camera.ts'
import type { Band } from './canvas.ts'
import { createStream, hash } from './hash.ts'
import { drawLimb } from './shapes.ts'

export interface TuftPlace {
  readonly x: number
  readonly z: number
  readonly heightM: number
}

interface ShadowPatch {
  readonly x0: number
  readonly z0: number
  readonly columns: number
  readonly rows: number
  readonly shade: Uint8Array
}

export interface DuneGrass {
  /** Share of the sun left by the blades' shadows on the ground at X, Z. */
  sunLeft(x: number, z: number): number
  /** Paints the tufts, far to near. */
  paint(band: Band): void
}

type Vector = readonly [number, number, number]
const segments = 12
const cellM = 0.008
const penumbra = 0.0046
const rowM = 2

/** Points of one blade, x y z from root to tip, and its width: arching away from the middle and bent downwind. */
function growBlade(place: TuftPlace, y: number, random: () => number) {
  const turn = random() * 6.283
  const out = Math.sqrt(random())
  const fallen = random() < 0.3
  const length = place.heightM * (fallen ? 0.35 : 0.55 + 0.6 * random())
  const lean = fallen ? 1.1 + 0.4 * random() : 0.1 + 0.75 * out * random()
  const droop = 0.25 + 0.75 * random()
  const dx = Math.cos(turn)
  const dz = Math.sin(turn)
  const root = 0.12 * place.heightM * out
  const points = new Float64Array((segments + 1) * 3)
  let px = place.x + dx * root
  let py = y - 0.02
  let pz = place.z + dz * root
  for (let i = 0; i <= segments; i++) {
    points.set([px, py, pz], i * 3)
    const t = i / segments
    const angle = lean + droop * t * t * 1.5
    const step = length / segments
    px += step * (dx * Math.sin(angle) + 0.22 * t)
    pz += step * (dz * Math.sin(angle) + 0.05 * t)
    py += step * Math.cos(angle)
  }
  return { points, widthM: 0.0016 + 0.0016 * random(), tint: random() * (fallen ? 0.4 : 1), dry: fallen ? 0 : random() }
}

/** Width along a blade: narrow at the root, then tapering to the tip. */
const widthShare = (i: number) => Math.min(1, 0.45 + (4 * i) / segments) * (1 - 0.88 * (i / segments) ** 1.5)

type Blade = ReturnType<typeof growBlade>

function castShadow(blades: readonly Blade[], x: number, y: number, z: number, tilt: Vector, sun: Vector): ShadowPatch {
  const drop = sun[1] - tilt[0] * sun[0] - tilt[2] * sun[2]
  const landings: number[] = []
  for (const { points, widthM } of blades) {
    for (let i = 0; i < segments; i++) {
      const steps = Math.ceil(
        Math.hypot(points[i * 3 + 3] - points[i * 3], points[i * 3 + 4] - points[i * 3 + 1]) /
          0.006 /
          Math.max(0.12, sun[1]),
      )
      for (let s = 0; s < steps; s++) {
        const k = s / steps
        const px = points[i * 3] + (points[i * 3 + 3] - points[i * 3]) * k
        const py = points[i * 3 + 1] + (points[i * 3 + 4] - points[i * 3 + 1]) * k
        const pz = points[i * 3 + 2] + (points[i * 3 + 5] - points[i * 3 + 2]) * k
        const t = (py - y - tilt[0] * (px - x) - tilt[2] * (pz - z)) / drop
        if (t > 0)
          landings.push(px - sun[0] * t, pz - sun[2] * t, t * penumbra, widthM * (1 - (i + s / steps) / (segments + 1)))
      }
    }
  }
  let [x0, x1, z0, z1] = [x, x, z, z]
  for (let i = 0; i < landings.length; i += 4) {
    x0 = Math.min(x0, landings[i])
    x1 = Math.max(x1, landings[i])
    z0 = Math.min(z0, landings[i + 1])
    z1 = Math.max(z1, landings[i + 1])
  }
  x0 -= 4 * cellM
  z0 -= 4 * cellM
  const columns = Math.ceil((x1 - x0) / cellM) + 5
  const rows = Math.ceil((z1 - z0) / cellM) + 5
  const depth = new Float32Array(columns * rows)
  for (let i = 0; i < landings.length; i += 4) {
    const reach = Math.min(3, Math.round(landings[i + 2] / cellM))
    const ci = Math.round((landings[i] - x0) / cellM)
    const cj = Math.round((landings[i + 1] - z0) / cellM)
    const weight = ((landings[i + 3] / cellM) * 0.75) / (2 * reach + 1)
    for (let j = Math.max(0, cj - reach); j <= Math.min(rows - 1, cj + reach); j++)
      for (let k = Math.max(0, ci - reach); k <= Math.min(columns - 1, ci + reach); k++)
        depth[j * columns + k] += weight / (2 * reach + 1)
  }
  return { x0, z0, columns, rows, shade: Uint8Array.from(depth, (d) => 255 * Math.exp(-4 * d)) }
}

/** Grows the tufts on ground of height `height` and works out their shadows. */
export function createDuneGrass(
  palette: Palette,
  camera: Camera,
  places: readonly TuftPlace[],
  height: (x: number, z: number, footprintM: number) => number,
  sun: Vector,
  sunShare: (x: number, y: number, z: number) => number,
): DuneGrass {
  const dry = palette.of('dryGrass')
  const green = palette.of('grass')
  const brush = createBrush()
  const bins = new Map<number, ShadowPatch[]>()
  const tufts = [...places]
    .sort((a, b) => b.z - a.z)
    .map((place) => {
      const { x, z } = place
      const y = height(x, z, 0.01)
      const count = Math.round(60 + 170 * place.heightM)
      const id = hash(Math.round(x * 1000), Math.round(z * 1000), 71)
      const blades = Array.from({ length: count }, (_, i) => growBlade(place, y, createStream(hash(id, i))))
      blades.sort((a, b) => b.points[2] - a.points[2])
      const tilt: Vector = [(height(x + 0.2, z, 0.01) - y) / 0.2, 0, (height(x, z + 0.2, 0.01) - y) / 0.2]
      const patch = castShadow(blades, x, y, z, tilt, sun)
      for (let r = Math.floor(patch.z0 / rowM); r <= Math.floor((patch.z0 + patch.rows * cellM) / rowM); r++)
        bins.set(r, [...(bins.get(r) ?? []), patch])
      const reach = place.heightM * 1.4
      return {
        blades,
        sun: sunShare(x, y + 0.3 * place.heightM, z),
        top: rowOf(camera, y + reach, z),
        foot: rowOf(camera, y - reach, z),
      }
    })
  return {
    sunLeft(x, z) {
      const near = bins.get(Math.floor(z / rowM))
      if (!near) return 1
      let left = 1
      for (const { x0, z0, columns, rows, shade } of near) {
        const gx = (x - x0) / cellM
        const gz = (z - z0) / cellM
        if (gx < 0 || gz < 0 || gx >= columns - 1 || gz >= rows - 1) continue
        const i = Math.floor(gx)
        const j = Math.floor(gz)
        const u = gx - i
        const v = gz - j
        const at = j * columns + i
        const upper = shade[at] + (shade[at + 1] - shade[at]) * u
        const lower = shade[at + columns] + (shade[at + columns + 1] - shade[at + columns]) * u
        left *= (upper + (lower - upper) * v) / 255
      }
      return left
    },
    paint(band) {
      for (const tuft of tufts) {
        if (tuft.foot < band.y0 || tuft.top > band.y1) continue
        for (const { points, widthM, tint, dry: dryness } of tuft.blades) {
          for (let i = 0; i < segments; i++) {
            const [xa, ya, za, xb, yb, zb] = points.subarray(i * 3, i * 3 + 6)
            const t = (i + 0.5) / segments
            const lit = tuft.sun * (0.1 + 0.9 * Math.min(1, 1.6 * t)) * (0.3 + 0.7 * tint)
            lightMix(brush, dry, green, dryness * 0.6, lit, (0.2 + 0.5 * t) * (0.4 + 0.6 * tint))
            const wa = (camera.focalPx * widthM * widthShare(i)) / za
            const wb = (camera.focalPx * widthM * widthShare(i + 1)) / zb
            drawLimb(
              band,
              columnOf(camera, xa, za),
              rowOf(camera, ya, za),
              wa,
              columnOf(camera, xb, zb),
              rowOf(camera, yb, zb),
              wb,
              -0.25,
              brush,
            )
          }
        }
      }
    },
  }
}
