// Colours of the coast at a point: wet and dry sand, rock with a dark wet foot, turf, water with sky in it, foam.
// Chooses by which surface is highest, so colours and shapes cannot disagree.
import type { Palette } from '../light/triplets.ts'
import { type Brush, light, lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import { type Foam, foamAt } from '../paint/foam.ts'
import { type Cells, cells2, fbm2, noise2 } from '../paint/noise.ts'
import { fbm3, noise3 } from '../paint/noise3.ts'
import { foamAge, seaHeight } from '../paint/sea.ts'
import { type ShoreSand, shoreSandAt } from '../paint/shore-sand.ts'
import type { ClearSky } from '../paint/sky.ts'
import { groundHeight, rockHeight, seawardAt, solidHeight, stoneHeight } from './coast-land.ts'
import { createCoastSand } from './coast-sand.ts'

function smooth(from: number, to: number, v: number): number {
  const t = Math.min(1, Math.max(0, (v - from) / (to - from)))
  return t * t * (3 - 2 * t)
}

function seaSurface(x: number, z: number, footprintM: number): number {
  return seaHeight(seawardAt(x, z), z, footprintM)
}

/** Returns a function that sets the brush to what lies at X, Z. */
export function createCoastShader(
  palette: Palette,
  camera: Camera,
  sky: ClearSky,
  sun: readonly [number, number, number],
  sunShare: (x: number, y: number, z: number) => number,
): (x: number, z: number, brush: Brush) => void {
  const [rock, lichen, dry, wet, foam, water, grass, straw, white, weed] = (
    ['rock', 'lichen', 'sand', 'sandWet', 'foam', 'water', 'grass', 'dryGrass', 'cloud', 'leaf'] as const
  ).map((name) => palette.of(name))
  const above = new Float64Array(3)
  const grit: ShoreSand = { slopeX: 0, slopeZ: 0, tone: 1 }
  const froth: Foam = { cover: 0, tone: 1 }
  const net: Cells = { f1: 0, f2: 0, id: 0 }
  const sand = createCoastSand(palette, camera, sky)
  return (x, z, brush) => {
    const acrossM = z / camera.focalPx
    const alongM = (acrossM * z) / camera.eyeM
    const grainM = Math.sqrt(acrossM * Math.min(alongM, 40 * acrossM))
    const seaward = seawardAt(x, z)
    const ground = groundHeight(x, z, acrossM)
    const rocky = rockHeight(x, z, acrossM)
    const crag = Math.max(rocky, stoneHeight(x, z, acrossM))
    const solid = solidHeight(x, z, acrossM)
    const sea = seaward < -1 ? -99 : seaHeight(seaward, z, acrossM)
    const y = Math.max(solid, sea)
    const e = Math.max(0.03, acrossM)
    const onWater = sea >= solid
    const stone = !onWater && crag > ground + 0.02
    const surface = onWater ? seaSurface : solidHeight
    let slopeX = (surface(x + e, z, acrossM) - y) / e
    let slopeZ = (surface(x, z + e, acrossM) - y) / e
    if (onWater) {
      slopeX +=
        0.09 * fbm2(x / 0.5, z / 0.8, 4, 361, alongM / 0.8) + 0.05 * fbm2(x / 2.3, z / 3.4, 3, 364, alongM / 3.4)
      slopeZ +=
        0.16 * fbm2(x / 0.6 + 9, z / 0.45, 5, 362, alongM / 0.45) + 0.06 * fbm2(x / 2.3, z / 3.4, 3, 365, alongM / 3.4)
    } else if (stone) {
      slopeX += 0.75 * fbm3(x / 0.3, y / 0.3, z / 0.3, 5, 366, acrossM / 0.3)
      slopeZ += 0.75 * fbm3(x / 0.3 + 7, y / 0.3, z / 0.3, 5, 367, acrossM / 0.3)
    } else {
      shoreSandAt(x, z, -seaward, acrossM, Math.min(alongM, 40 * acrossM), grit)
      slopeX += grit.slopeX
      slopeZ += grit.slopeZ
    }
    const n = 1 / Math.sqrt(1 + slopeX * slopeX + slopeZ * slopeZ)
    const facing = Math.max(0, (sun[1] - slopeX * sun[0] - slopeZ * sun[2]) * n)
    const seen = facing > 0 ? sunShare(x, y + 0.02, z) : 0
    const open = 0.35 + 0.65 * n
    if (onWater) {
      const far = Math.hypot(x, z, camera.eyeM - y)
      const vx = x / far
      const vy = (y - camera.eyeM) / far
      const vz = z / far
      const cos = Math.min(1, Math.max(0.06, (vx * slopeX - vy + vz * slopeZ) * n))
      const fresnel = 0.02 + 0.98 * (1 - cos) ** 5
      const rx = vx - 2 * cos * slopeX * n
      const ry = Math.max(0.02, vy + 2 * cos * n)
      const rz = vz - 2 * cos * slopeZ * n
      sky.colour(rx / Math.max(0.2, rz), ry / Math.max(0.2, rz), above)
      const glint = Math.max(0, rx * sun[0] + ry * sun[1] + rz * sun[2]) ** 90 * 9 * seen
      const depth = smooth(0, 0.55, sea - solid)
      lightMix(brush, wet, water, 0.3 + 0.7 * depth, 0.55 * facing * seen, 0.6 * open)
      if (depth < 1 && acrossM < 0.05) {
        // Waves gather sunlight in a net on the sand below them.
        const bend = 0.3 * noise2(x / 0.5, z / 0.7, 375) + 0.12 * noise2(x / 0.16, z / 0.2, 378)
        cells2((x + bend) / 0.34, (z + 0.7 * bend - 0.4 * x) / 0.21, 376, net)
        const gathered = smooth(0.34, 0, net.f2 - net.f1) ** 2 - 0.2
        const calm = smooth(-0.25, 0.45, noise2(x / 1.9, z / 2.6, 379) + 0.2)
        scale(brush, 1 + 0.6 * gathered * calm * (1 - depth) * seen * smooth(0.05, 0.015, acrossM))
      }
      const k = 1 - fresnel
      brush.r = brush.r * k + fresnel * (above[0] * 1.7 + glint)
      brush.g = brush.g * k + fresnel * (above[1] * 1.7 + glint * 0.62)
      brush.b = brush.b * k + fresnel * (above[2] * 1.7 + glint * 0.4)
      let age = foamAge(seaward, z, (sea - ground) / 0.055, grainM)
      const stale = fbm2(seaward / 1.5, z / 4.6, 4, 377, grainM / 1.5)
      age = Math.max(age, 0.62 * smooth(-0.12, 0.5, stale) * smooth(20, 7, seaward))
      const collarM = 0.25 + 0.01 * z
      const near = Math.max(rockHeight(x + collarM, z + collarM, 0.5), rockHeight(x - collarM, z + collarM, 0.5))
      if (near > 0 || crag > -0.2) age = Math.max(age, 0.55 + 0.5 * fbm2(x / 0.9, z / 0.9, 3, 368, grainM / 0.9))
      foamAt(seaward, z, age, grainM, 371, froth)
      if (froth.cover > 0.01) {
        const { r, g, b, material } = brush
        lightMix(brush, foam, white, 0.48, 0.16 + 1.05 * facing * seen, 0.9 * open)
        scale(brush, froth.tone * (0.95 + 0.1 * fbm2(x / 0.05, z / 0.08, 3, 363, grainM / 0.05)))
        brush.r = r + (brush.r - r) * froth.cover
        brush.g = g + (brush.g - g) * froth.cover
        brush.b = b + (brush.b - b) * froth.cover
        if (froth.cover < 0.5) brush.material = material
      }
      return
    }
    const patch = fbm2(x / 1.3, z / 1.3, 5, 369, grainM / 1.3)
    const steep = Math.hypot(slopeX, slopeZ)
    if (stone) {
      const splashed = smooth(12, 5, -seaward) * smooth(0.75, 0.15, crag - ground + 0.35 * patch)
      const damp = Math.max(smooth(0.95, 0.35, y / (z > 90 ? 3 : 1) + 0.3 * patch), splashed)
      const size = z > 90 ? 4 : 1
      const beds = noise2((y + 0.22 * x + 0.1 * z) / (0.16 * size) + patch, 0.5, 372)
      const crack = smooth(
        0.075,
        0.02,
        Math.abs(noise3(x / (0.8 * size), y / (1.6 * size), z / (0.8 * size), 373) + 0.1 * patch),
      )
      const mottle = fbm3(x / 0.07, y / 0.07, z / 0.07, 3, 374, acrossM / 0.07)
      lightMix(
        brush,
        rock,
        lichen,
        0.5 * smooth(0.1, 0.6, patch + 0.3 * mottle) * (1 - damp),
        facing * seen + 0.04,
        open * 0.9,
      )
      scale(brush, (1 + 0.25 * patch + 0.2 * beds + 0.18 * mottle) * (1 - 0.5 * crack) * (1 - 0.5 * damp) * 1.2)
      const grown = 0.5 * damp * smooth(0.05, 0.4, mottle + 0.4 * patch + 0.2)
      const blown = 0.75 * smooth(0.16, 0.02, crag - ground + 0.1 * mottle) * smooth(1.2, 0.5, steep)
      if (grown + blown > 0.02 && z < 90) {
        const { r, g, b, material } = brush
        const share = Math.max(grown, blown)
        lightMix(brush, dry, weed, grown > blown ? 1 : 0, (grown > blown ? 0.22 : 0.8) * facing * seen, 0.5 * open)
        brush.r = r + (brush.r - r) * share
        brush.g = g + (brush.g - g) * share
        brush.b = b + (brush.b - b) * share
        if (share < 0.5) brush.material = material
      }
    } else if (z > 85 && y > 3) {
      const wide = 3
      const broadX = (groundHeight(x + wide, z, wide) - groundHeight(x - wide, z, wide)) / (2 * wide)
      const broadZ = (groundHeight(x, z + wide, wide) - groundHeight(x, z - wide, wide)) / (2 * wide)
      const turf =
        smooth(1.15, 0.65, Math.hypot(broadX, broadZ) + 0.25 * patch + 0.06 * steep) * smooth(6, 11, y + 3 * patch)
      lightMix(brush, grass, straw, 0.3 + 0.3 * patch, facing * seen + 0.05, open)
      const { r, g, b, material } = brush
      const blades = 1 + 0.35 * fbm2(x / 0.9, z / 1.6, 4, 370, grainM / 0.9) + 0.2 * patch
      light(brush, rock, facing * seen + 0.04, open)
      scale(brush, 1 + 0.3 * patch)
      brush.r += (r * blades - brush.r) * turf
      brush.g += (g * blades - brush.g) * turf
      brush.b += (b * blades - brush.b) * turf
      if (turf > 0.5) brush.material = material
    } else {
      const footM = rocky - ground
      sand({ x, z, y, inlandM: -seaward, footM, sun: facing * seen, open, tone: grit.tone, grainM }, brush)
    }
  }
}
