// The coast's sand as the last waves left it: a film of water that mirrors the sky, rims of foam where waves turned back, lines of
// wrack where the tide did, and damp, scoured hollows with pools at the foot of rocks. Sets the brush at a point.
import type { Palette } from '../light/triplets.ts'
import { type Brush, lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import { fbm2, noise2 } from '../paint/noise.ts'
import type { ClearSky } from '../paint/sky.ts'

/** Where waves turned back and where tides did: distance behind the water's edge, width of the line, and how torn it is. */
const rims = [
  { at: 0.6, wideM: 0.035, torn: 0.35 },
  { at: 1.5, wideM: 0.02, torn: 0.5 },
] as const
const tides = [
  { at: 4.6, wideM: 0.22, torn: 0.15 },
  { at: 8.4, wideM: 0.36, torn: 0.25 },
] as const

export interface SandSpot {
  readonly x: number
  readonly z: number
  /** Height, and distance behind the water's edge. */
  readonly y: number
  readonly inlandM: number
  /** Height of the rock here above the sand, below 0 outside its foot. */
  readonly footM: number
  /** Direct sun after its angle, and share of the sky. */
  readonly sun: number
  readonly open: number
  readonly tone: number
  /** Width of a pixel on the ground. */
  readonly grainM: number
}

function smooth(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

/** How much of a point a torn line at `at` metres covers. */
function lineCover(spot: SandSpot, at: number, wideM: number, torn: number, seed: number): number {
  const { x, z, inlandM, grainM } = spot
  if (Math.abs(inlandM - at) > 2.2) return 0
  const lobes = 1.6 * noise2(z / 2.3, at, seed) ** 2 + 0.05 * noise2(z / 0.4, at, seed + 1)
  const off = Math.abs(inlandM - at - 0.9 * noise2(z / 9, at * 3, seed + 2) + lobes - 0.4)
  const wide = wideM + 0.6 * grainM
  if (off > 2.5 * wide) return 0
  const broken = smooth(torn - 0.25, torn + 0.25, noise2(x / 1.4, z / 1.9, seed + 3) + 0.55)
  const clumps = smooth(-0.25, 0.2, fbm2(x / 0.06, z / 0.06, 4, seed + 4, grainM / 0.06) + 0.5 - off / wide)
  return broken * clumps * Math.min(1, wideM / (0.4 * wide)) * smooth(2.5 * wide, 0.4 * wide, off)
}

function cover(brush: Brush, r: number, g: number, b: number, share: number): void {
  brush.r = r + (brush.r - r) * share
  brush.g = g + (brush.g - g) * share
  brush.b = b + (brush.b - b) * share
}

export function createCoastSand(
  palette: Palette,
  camera: Camera,
  sky: ClearSky,
): (spot: SandSpot, brush: Brush) => void {
  const [dry, wet, foam, white, weed, straw] = (['sand', 'sandWet', 'foam', 'cloud', 'leaf', 'driedLeaf'] as const).map(
    (name) => palette.of(name),
  )
  const above = new Float64Array(3)
  return (spot, brush) => {
    const { x, z, y, inlandM, footM, sun, open, tone, grainM } = spot
    const patch = fbm2(x / 1.3, z / 1.3, 5, 369, grainM / 1.3)
    const broad = fbm2(inlandM / 2.4, z / 11, 4, 393, grainM / 2.4)
    const scoured = smooth(-0.42, -0.02, footM + 0.12 * patch)
    const reached = smooth(10, 4, inlandM)
    const damp = Math.max(smooth(3.6, 1.1, inlandM + 0.9 * patch + 0.8 * broad), 0.9 * scoured * reached)
    lightMix(brush, dry, wet, damp, sun + 0.03, open * (1 - 0.3 * scoured))
    scale(brush, (1 + 0.07 * patch + 0.12 * broad) * tone * (1 - 0.34 * scoured))
    const pool = reached * smooth(0.5, 0.62, scoured + 0.35 * noise2(x / 0.9, z / 1.1, 394)) * smooth(0, -0.04, footM)
    const film = Math.max(0.85 * smooth(2.1, 0.1, inlandM + 0.7 * patch + 0.4 * broad), pool)
    if (film > 0.01) {
      const far = Math.hypot(x, z, camera.eyeM - y)
      const up = (camera.eyeM - y) / far
      const mirrored = film * (0.06 + 0.94 * (1 - up) ** 4)
      sky.colour(x / z, (camera.eyeM - y) / z, above)
      const dark = 1 - 0.3 * pool
      brush.r = brush.r * (1 - mirrored) * dark + 1.5 * mirrored * above[0]
      brush.g = brush.g * (1 - mirrored) * dark + 1.5 * mirrored * above[1]
      brush.b = brush.b * (1 - mirrored) * dark + 1.5 * mirrored * above[2]
    }
    let wrack =
      0.8 *
      reached *
      smooth(-0.2, -0.03, footM) *
      smooth(0.25, 0.5, fbm2(x / 0.3, z / 0.3, 4, 395, grainM / 0.3) + 0.15)
    for (const { at, wideM, torn } of tides) wrack = Math.max(wrack, lineCover(spot, at, wideM, torn, 401))
    let rim = 0
    for (const { at, wideM, torn } of rims) rim = Math.max(rim, lineCover(spot, at, wideM, torn, 411))
    if (wrack > 0.02) {
      const { r, g, b, material } = brush
      const fresh = 0.5 + 0.5 * noise2(x / 0.25, z / 0.25, 396)
      lightMix(brush, straw, weed, 0.4 * fresh, 0.5 * sun, 0.5 * open)
      scale(brush, 0.55 + 0.35 * fbm2(x / 0.03, z / 0.04, 2, 397, grainM / 0.03))
      cover(brush, r, g, b, wrack)
      if (wrack < 0.5) brush.material = material
    }
    if (rim > 0.02) {
      const { r, g, b, material } = brush
      lightMix(brush, foam, white, 0.48, 0.16 + 1.05 * sun, 0.8 * open)
      cover(brush, r, g, b, 0.4 * rim)
      if (rim < 0.5) brush.material = material
    }
  }
}
