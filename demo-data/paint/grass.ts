// Standing grass: blades rooted in world space, sown once from far to near in thin depth strips, so no sorting is needed.
// The number of blades depends on the ground seen and never on pixels; far away fewer and wider tufts stand for many blades.
import { hash, createStream } from './hash.ts'
import { type Brush, createBrush } from './brush.ts'
import { type Camera, columnOf, rowOf } from './camera.ts'
import { type Band, coverSpan } from './canvas.ts'
import type { Solid } from './strokes.ts'

/** What grows at a place. A scene fills it in for every tuft. */
export interface Sward {
  /** Height of the blades in m; 0 = bare. */
  heightM: number
  /** Share of blades that stand, 0…1. */
  density: number
  /** Height of the ground in m. */
  groundM: number
  /** Sideways lean of the tips as a share of the height: wind and trampling. */
  lean: number
}

export interface GrassOptions {
  readonly seed: number
  readonly nearM: number
  readonly farM: number
  /** Blades per m² close to the camera; 1500 is a full meadow. */
  readonly bladesPerM2: number
  readonly widthM: number
  sward(x: number, z: number, out: Sward): void
  /** Sets the colour of a blade's tip. `chance` 0…1 is the blade's own. */
  colour(x: number, z: number, chance: number, brush: Brush): void
}

const stride = 12
/** Light at the foot of a blade as a share of that at its tip. */
const footLight = 0.16
const stripShare = 0.0035
const sliceShare = 0.03

/** Blades per m² at distance z relative to the near density, and the factor by which tufts are wider than blades. */
function thinning(z: number): number {
  if (z <= 3) return 1
  return z <= 9 ? 3 / z : (1 / 3) * (9 / z) ** 1.55
}

/** Sows the grass and returns it in depth slices, far to near, ready for `paintStrokes`. */
export function sowGrass(camera: Camera, options: GrassOptions): Solid[] {
  const { nearM, farM, seed } = options
  const slices: Solid[] = []
  const sward: Sward = { heightM: 0, density: 0, groundM: 0, lean: 0 }
  const brush = createBrush()
  const halfSlope = (camera.centreX / camera.focalPx) * 1.06
  let data = new Float32Array(stride * 4096)
  let count = 0
  let z = farM
  let sliceEnd = farM * (1 - sliceShare)
  for (let strip = 0; z > nearM; strip++) {
    const depth = z * stripShare
    const k = thinning(z)
    const halfM = halfSlope * z + 0.3
    const wanted = options.bladesPerM2 * k * depth * 2 * halfM
    const whole = Math.floor(wanted) + (hash(strip, seed, 3) / 4294967296 < wanted % 1 ? 1 : 0)
    const wider = k < 1 ? k ** -0.6 : 1
    for (let i = 0; i < whole; i++) {
      const next = createStream(hash(strip, i, seed, 5))
      const x = (2 * next() - 1) * halfM
      const bladeZ = z - next() * depth
      options.sward(x, bladeZ, sward)
      if (sward.heightM <= 0.01 || next() > sward.density) continue
      const height = sward.heightM * (0.45 + 0.75 * next())
      const px = camera.focalPx / bladeZ
      options.colour(x, bladeZ, next(), brush)
      const light = 0.55 + 0.5 * next()
      if ((count + 1) * stride > data.length) {
        const larger = new Float32Array(data.length * 2)
        larger.set(data)
        data = larger
      }
      const spread = next() - 0.5
      data.set(
        [
          columnOf(camera, x, bladeZ),
          rowOf(camera, sward.groundM, bladeZ),
          height * px,
          (sward.lean * 0.5 + spread * 0.35) * height * px,
          (sward.lean * 0.6 + spread * (0.2 + 0.8 * next())) * height * px,
          0.5 * options.widthM * wider * (0.6 + 0.8 * next()) * px,
          brush.r * light,
          brush.g * light,
          brush.b * light,
          brush.material,
          brush.sun,
          footLight + 0.2 * next(),
        ],
        count * stride,
      )
      count++
    }
    z -= depth
    if (z < sliceEnd || z <= nearM) {
      if (count > 0) slices.push(grassSlice(z, data.slice(0, count * stride)))
      count = 0
      sliceEnd = z * (1 - sliceShare)
    }
  }
  return slices
}

function grassSlice(z: number, data: Float32Array): Solid {
  let top = Infinity
  let bottom = -Infinity
  for (let at = 0; at < data.length; at += stride) {
    top = Math.min(top, data[at + 1] - data[at + 2])
    bottom = Math.max(bottom, data[at + 1])
  }
  return {
    z,
    paint(band) {
      if (bottom < band.y0 || top > band.y1) return
      const brush = createBrush()
      for (let at = 0; at < data.length; at += stride) {
        if (data[at + 1] >= band.y0 && data[at + 1] - data[at + 2] < band.y1) paintBlade(band, data, at, brush)
      }
    },
  }
}

function paintBlade(band: Band, data: Float32Array, at: number, brush: Brush): void {
  const foot = data[at + 1]
  const height = data[at + 2]
  const first = Math.max(band.y0, Math.floor(foot - height))
  const last = Math.min(band.y1 - 1, Math.floor(foot))
  const x0 = data[at]
  const lean = data[at + 3]
  const curve = data[at + 4]
  const width = data[at + 5]
  const dark = data[at + 11]
  brush.material = data[at + 9]
  brush.sun = data[at + 10]
  for (let y = first; y <= last; y++) {
    const upper = Math.min(1, (foot - y) / height)
    const lower = Math.max(0, (foot - y - 1) / height)
    const xUpper = x0 + lean * upper + curve * upper * upper
    const xLower = x0 + lean * lower + curve * lower * lower
    const t = (upper + lower) / 2
    const w = width * Math.sqrt(1 - t) * (1.15 - 0.3 * t)
    const light = dark + (1 - dark) * t
    brush.r = data[at + 6] * light
    brush.g = data[at + 7] * light
    brush.b = data[at + 8] * light
    const slant = Math.abs(xUpper - xLower) / 2
    const middle = (xUpper + xLower) / 2
    const half = w + slant
    const coverage = ((upper - lower) * height * (w + 1e-4)) / (half + 1e-4)
    if (half > 0.01) coverSpan(band, y, middle - half, middle + half, coverage > 1 ? 1 : coverage, brush)
  }
}
