// From lit plants in space to strokes in the picture: projection, the angle between leaf, sun and eye, and light shining
// through leaves. Transmission is nearly as strong as reflection in the near infrared, so leaves against the light glow.
import { type Brush, createBrush } from './brush.ts'
import type { Camera } from './camera.ts'
import { type Foliage, leafStride, limbStride } from './foliage.ts'
import type { FoliageLight } from './foliage-light.ts'
import { addLeafStroke, addLimbStroke, type Strokes } from './strokes.ts'
import type { Vector } from './vector.ts'

/** What a part of a plant receives: everything a scene needs to choose its colour. */
interface Part {
  x: number
  y: number
  z: number
  /** Sun on it, 0…1: share that passes other leaves × angle of incidence, or what shines through from behind. */
  sun: number
  /** Share of the sky seen, 0…1. */
  sky: number
  /** −1…1, from the plant. */
  tint: number
  kind: number
}

export interface Dye {
  /** Sets the brush for a leaf. */
  leaf(part: Part, brush: Brush): void
  /** Sets the brush for a limb. */
  limb(part: Part, brush: Brush): void
}

const nearestM = 0.25

/** Adds every part of `foliage` in front of the camera to `strokes`. */
export function placeFoliage(
  strokes: Strokes,
  foliage: Foliage,
  lit: FoliageLight,
  camera: Camera,
  sun: Vector,
  dye: Dye,
): void {
  const brush = createBrush()
  const part: Part = { x: 0, y: 0, z: 0, sun: 0, sky: 0, tint: 0, kind: 0 }
  const f = camera.focalPx
  const cx = camera.centreX
  const cy = camera.horizonY
  const eye = camera.eyeM
  const { leaves, limbs } = foliage
  for (let i = 0; i < foliage.leafCount; i++) {
    const o = i * leafStride
    const x = leaves[o]
    const y = leaves[o + 1]
    const z = leaves[o + 2]
    const tipX = x + leaves[o + 3]
    const tipY = y + leaves[o + 4]
    const tipZ = z + leaves[o + 5]
    if (z < nearestM || tipZ < nearestM) continue
    const nx = leaves[o + 6]
    const ny = leaves[o + 7]
    const nz = leaves[o + 8]
    const length = Math.hypot(leaves[o + 3], leaves[o + 4], leaves[o + 5])
    const bx = (ny * leaves[o + 5] - nz * leaves[o + 4]) / length
    const by = (nz * leaves[o + 3] - nx * leaves[o + 5]) / length
    const bz = (nx * leaves[o + 4] - ny * leaves[o + 3]) / length
    const x0 = cx + (f * x) / z
    const y0 = cy - (f * (y - eye)) / z
    let x1 = cx + (f * tipX) / tipZ
    let y1 = cy - (f * (tipY - eye)) / tipZ
    const w = leaves[o + 9]
    const sx = (f * w * (bx - (x / z) * bz)) / z
    const sy = (-f * w * (by - ((y - eye) / z) * bz)) / z
    let ax = x1 - x0
    let ay = y1 - y0
    let seen = Math.hypot(ax, ay)
    const side = Math.hypot(sx, sy)
    if (seen < side * 0.5) {
      const k = (side * 0.5 + 1e-6) / (seen + 1e-6)
      ax *= k
      ay *= k
      x1 = x0 + ax
      y1 = y0 + ay
      seen = Math.hypot(ax, ay) + 1e-9
    }
    const halfWidth = Math.max(Math.abs(sx * ay - sy * ax) / seen, side * 0.12)
    const toSun = nx * sun[0] + ny * sun[1] + nz * sun[2]
    const toEye = -(nx * x + ny * (y - eye) + nz * z)
    const strength = toSun < 0 ? -toSun : toSun
    part.x = x
    part.y = y
    part.z = z
    part.sun = lit.leafSun[i] * (toSun * toEye > 0 ? 0.2 + 0.8 * strength : 0.12 + 0.68 * strength)
    part.sky = lit.leafSky[i] * (toEye > 0 === ny > 0 ? 1 : 0.75)
    part.tint = leaves[o + 10]
    part.kind = leaves[o + 11]
    dye.leaf(part, brush)
    addLeafStroke(strokes, z, x0, y0, x1, y1, halfWidth, 0.1 + 0.12 * part.tint, brush)
  }
  part.tint = 0
  for (let i = 0; i < foliage.limbCount; i++) {
    const o = i * limbStride
    const z0 = limbs[o + 2]
    const z1 = limbs[o + 6]
    if (z0 < nearestM || z1 < nearestM) continue
    part.x = (limbs[o] + limbs[o + 4]) / 2
    part.y = (limbs[o + 1] + limbs[o + 5]) / 2
    part.z = (z0 + z1) / 2
    part.sun = lit.limbSun[i] * (0.35 - 0.3 * sun[2])
    part.sky = lit.limbSky[i]
    dye.limb(part, brush)
    const x0 = cx + (f * limbs[o]) / z0
    const y0 = cy - (f * (limbs[o + 1] - eye)) / z0
    const x1 = cx + (f * limbs[o + 4]) / z1
    const y1 = cy - (f * (limbs[o + 5] - eye)) / z1
    addLimbStroke(
      strokes,
      part.z,
      x0,
      y0,
      (f * limbs[o + 3]) / z0,
      x1,
      y1,
      (f * limbs[o + 7]) / z1,
      0.45 * sun[0],
      brush,
    )
  }
}
