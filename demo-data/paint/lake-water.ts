// The surface of a lake in a light breeze: calm lanes that mirror sharply, ruffled patches that mirror the sky higher up.
// Waves that a pixel can resolve turn the mirrored ray; finer ones only smear it upwards and downwards.
// Ground truth: `water`.
import type { Palette } from '../light/triplets.ts'
import { createBrush, light } from './brush.ts'
import { type Camera, groundDistance } from './camera.ts'
import { type Band, coverIndex } from './canvas.ts'
import type { Mirror } from './mirror.ts'
import { fbm2, noise2 } from './noise.ts'
import { waterReflectance } from './puddle.ts'

/** Wave trains: length in m and slope of the average wave under a light breeze; tuned by eye. */
const waves = [
  { lengthM: 1.7, slope: 0.008 },
  { lengthM: 0.66, slope: 0.012 },
  { lengthM: 0.25, slope: 0.011 },
  { lengthM: 0.1, slope: 0.007 },
]

/** Wind on the water 0 (glassy) … 1 (ruffled) at X, Z. */
function windAt(x: number, z: number, seed: number): number {
  const lanes = fbm2(x / 60 + 0.3 * noise2(x / 40, z / 90, seed + 9), z / 21, 3, seed + 8)
  return Math.min(1, Math.max(0.05, 0.24 + 0.62 * lanes + (z > 60 ? 0.14 : 0)))
}

/**
 * Paints every water pixel below the horizon. `isWater` leaves out land; `sunAt` is the share of the sun on the water, which
 * matters little: most of its light is mirrored.
 */
export function paintLakeWater(
  band: Band,
  camera: Camera,
  palette: Palette,
  mirror: Mirror,
  seed: number,
  isWater: (x: number, z: number) => boolean,
): void {
  const brush = createBrush()
  const body = palette.of('waterDeep')
  const out = new Float64Array(3)
  for (let y = Math.max(band.y0, Math.ceil(camera.horizonY + 0.01)); y < band.y1; y++) {
    const z = groundDistance(camera, y + 0.5)
    const down = (y + 0.5 - camera.horizonY) / camera.focalPx
    const acrossM = z / camera.focalPx
    const alongM = (z * z) / (camera.focalPx * camera.eyeM)
    const lever = 0.3 + 0.7 * Math.min(1, z / 22)
    const row = (y - band.y0) * band.width
    for (let px = 0; px < band.width; px++) {
      const across = (px + 0.5 - camera.centreX) / camera.focalPx
      const x = across * z
      if (!isWater(x, z)) continue
      const wind = windAt(x, z, seed)
      let slopeX = 0
      let slopeZ = 0
      let rough = 0
      for (let k = 0; k < waves.length; k++) {
        const { lengthM, slope } = waves[k]
        const s = slope * wind * lever
        const fp = alongM / lengthM
        const seen = fp < 0.3 ? 1 : fp < 1 ? (1 - fp) / 0.7 : 0
        rough += s * s * (1 - seen * seen)
        if (seen <= 0) continue
        slopeX += 0.6 * s * seen * noise2(x / lengthM, (z * 0.6) / lengthM + 31 * k, seed + k)
        slopeZ += s * seen * noise2(x / (1.9 * lengthM), z / lengthM + 17 * k, seed + 20 + k)
      }
      const smear = 2 * Math.sqrt(rough)
      const nn = 1 + slopeX * slopeX + slopeZ * slopeZ
      const dn = -across * slopeX - down - slopeZ
      const k = (2 * dn) / nn
      const rx = across + k * slopeX
      const ry = -down - k
      const rz = 1 + k * slopeZ
      const up = Math.max(0.0004, ry / rz) + 0.5 * smear
      mirror.colour(rx / rz, up, 0.5 * smear + acrossM * 0.2, out)
      const length = Math.sqrt(1 + across * across + down * down)
      const f = waterReflectance((-dn / Math.sqrt(nn) / length) * 0.92 + 0.5 * Math.sqrt(rough))
      light(brush, body, 0.8, 1)
      brush.r = brush.r * (1 - f) + out[0] * f
      brush.g = brush.g * (1 - f) + out[1] * f
      brush.b = brush.b * (1 - f) + out[2] * f
      brush.sun = 1
      coverIndex(band, row + px, 1, brush)
    }
  }
}
