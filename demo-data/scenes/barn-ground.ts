// Ground of the farm track: two ruts with water standing in them, a grassy crown between, verges, fields beyond.
// One description serves the earth's texture, the grass that grows on it and the puddles.
import type { Palette } from '../light/triplets.ts'
import { type Air, throughAir } from '../paint/air.ts'
import { type Brush, lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import type { Band } from '../paint/canvas.ts'
import type { Sward } from '../paint/grass.ts'
import { fbm2, noise2 } from '../paint/noise.ts'
import { lookUp, rippleSlopes, waterReflectance } from '../paint/puddle.ts'
import { soilAt, type SoilSpot } from '../paint/soil.ts'
import { doorstep, underBarn } from './barn-shape.ts'

const smooth = (a: number, b: number, v: number) => {
  const t = Math.min(1, Math.max(0, (v - a) / (b - a)))
  return t * t * (3 - 2 * t)
}

const rutM = 0.78
/** Where water stands for long: distance, half-length in m, left or right rut. */
const pools = [
  [3.3, 0.9, 0],
  [7.6, 1.3, 0],
  [4.9, 0.9, 1],
  [10.5, 1.6, 1],
  [15, 1.2, 0],
] as const

/** Middle of the track at distance z: it swings to the right on its way to the door. */
export function trackX(z: number): number {
  const back = doorstep.z - z
  return doorstep.x + 0.6 + 0.115 * back * Math.sin(0.35 + back * 0.135) - 0.6 * smooth(10, 0, back)
}

export interface BarnGround {
  colour(x: number, z: number, across: number, along: number, brush: Brush): void
  sward(x: number, z: number, out: Sward): void
  bladeColour(x: number, z: number, chance: number, brush: Brush): void
  woodCover(x: number, z: number): number
  /** Distance from the middle of the track, m. */
  fromTrack(x: number, z: number): number
  /** Depth of standing water, arbitrary units; 0 where the ground is dry. */
  waterAt(x: number, z: number): number
}

export function createBarnGround(
  palette: Palette,
  seed: number,
  air: Air,
  camera: Camera,
  mirror: { readonly picture: Band; readonly scale: number },
): BarnGround {
  const grass = palette.of('grass')
  const dry = palette.of('dryGrass')
  const soil = palette.of('soil')
  const stone = palette.of('limestone')
  const spot: SoilSpot = { lightness: 1, stone: 0 }
  const slope = { x: 0, z: 0 }
  const seen = new Float64Array(3)

  const offTrack = (x: number, z: number) => x - trackX(z) - 0.1 * noise2(z / 1.4, 2, seed)
  const wetness = (x: number, z: number, u: number) => {
    const side = u < 0 ? 0 : 1
    const rut = Math.exp(-(((Math.abs(u) - rutM) / 0.3) ** 2))
    const pool = noise2(z / 2.9 + 0.37, side * 7 + 1.5, seed + 3) + 0.35 * noise2(z / 0.9, side * 5, seed + 4)
    const relief = 0.18 * fbm2(x / 0.34, z / 0.5, 4, seed + 5)
    let standing = 0
    for (const [at, reach, hand] of pools) if (hand === side) standing += Math.exp(-(((z - at) / reach) ** 2))
    return rut * (0.5 + 0.5 * pool + 0.75 * standing) - 0.72 + relief
  }
  const dryness = (x: number, z: number) => Math.min(0.95, Math.max(0.05, 0.5 + 0.7 * fbm2(x / 5, z / 5, 3, seed + 11)))

  return {
    fromTrack: (x, z) => Math.abs(offTrack(x, z)),
    waterAt: (x, z) => Math.max(0, wetness(x, z, offTrack(x, z))),
    woodCover: (x, z) => smooth(-0.75, -0.2, fbm2(x / 90, z / 200, 3, seed + 21)),
    sward(x, z, out) {
      const u = Math.abs(offTrack(x, z))
      const tuft = fbm2(x / 0.7, z / 0.7, 3, seed + 2)
      const field = fbm2(x / 5, z / 5, 2, seed + 4)
      const crown = u < 0.46 ? smooth(0.46, 0.24, u) : 0
      const verge = smooth(1.12, 1.5, u + 0.12 * tuft)
      const deep = smooth(1.3, 2.6, u)
      out.heightM = Math.max(
        crown * (0.17 + 0.1 * tuft),
        verge * (0.22 + 0.26 * deep) * (1.05 + 0.5 * field + 0.5 * tuft),
      )
      out.density = Math.max(crown * 0.95, verge) * smooth(-1.0, -0.2, tuft + 0.3 * field)
      out.groundM = verge * 0.06 + 0.03 * tuft * verge
      out.lean = 0.3 * fbm2(x / 3 + 5, z / 4, 2, seed + 6) + 0.14
      if (underBarn(x, z)) out.heightM = 0
    },
    bladeColour(x, z, chance, brush) {
      const share = Math.min(1, Math.max(0, dryness(x, z) + 0.8 * (chance - 0.5)))
      lightMix(brush, grass, dry, share, 0, 0, 0.8, 0.14)
      const tuft = fbm2(x / 0.7, z / 0.7, 2, seed + 2)
      scale(brush, Math.max(0.35, (0.8 + 0.45 * tuft) * (0.75 + 0.5 * chance)))
      throughAir(brush, air, z)
    },
    colour(x, z, across, along, brush) {
      const u = offTrack(x, z)
      const fp = Math.max(across, along * 0.5)
      if (Math.abs(u) > 1.75 || z > 34) {
        const hidden = z < 26
        const coarse = fbm2(x / 2.6, z / 4, hidden ? 2 : 6, seed + 31, fp / 2.6)
        lightMix(brush, grass, dry, dryness(x, z), 0, 0, 0.72, 0.12)
        scale(brush, (hidden ? 0.34 : 0.34 + 0.5 * smooth(26, 70, z)) * (0.9 + 0.25 * coarse))
        throughAir(brush, air, z)
        return
      }
      const wet = wetness(x, z, u)
      soilAt(x, z, fp, seed + 41, -0.35, spot)
      const damp = smooth(-0.42, -0.02, wet)
      const litter = fbm2(x / 0.05, z / 0.05, 3, seed + 45, fp / 0.05)
      const straw = Math.max(0, Math.min(0.7, 0.9 * litter - 0.15 + 0.5 * smooth(0.35, 0.15, Math.abs(u))))
      const open = 1 - 0.28 * Math.exp(-(((Math.abs(u) - rutM) / 0.3) ** 2)) - 0.35 * smooth(1.0, 1.6, Math.abs(u))
      lightMix(brush, soil, spot.stone > 0.4 ? stone : dry, spot.stone > 0.4 ? 0.7 : straw * (1 - damp), 0, 0, 0.85)
      scale(brush, spot.lightness * open * (1 - 0.5 * damp))
      const edge = Math.min(1, Math.max(0, wet / Math.max(0.02, 3 * fp) + 0.5))
      const film = 0.22 * smooth(-0.12, 0, wet)
      if (edge > 0 || film > 0) {
        rippleSlopes(x, z, fp, seed + 51, slope)
        const sine = camera.eyeM / Math.sqrt(camera.eyeM ** 2 + x * x + z * z)
        const mirrored = waterReflectance(sine)
        const row = camera.horizonY - (camera.focalPx * camera.eyeM) / z
        const f = 2 * camera.focalPx
        const bump = edge > 0.5 ? 1 : 3.5
        lookUp(
          mirror.picture,
          (camera.centreX + (camera.focalPx * x) / z + bump * slope.x * f * 0.6) * mirror.scale,
          (row - bump * slope.z * f) * mirror.scale,
          seen,
        )
        const body = 1 - edge * (0.35 + 0.35 * smooth(0, 0.25, wet))
        const k = mirrored * Math.max(edge, film)
        brush.r = brush.r * body * (1 - k) + seen[0] * k
        brush.g = brush.g * body * (1 - k) + seen[1] * k
        brush.b = brush.b * body * (1 - k) + seen[2] * k
        if (edge > 0.5) brush.material = palette.of('water').id
      }
      throughAir(brush, air, z)
    },
  }
}
