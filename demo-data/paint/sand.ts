// Sand in sunlight: slope of the ground, ripples, avalanche streaks on slip faces, grains down to the pixel, skylight and the
// light that sunlit sand throws into the shade. Ground truth: `sand`.
import type { Palette } from '../light/triplets.ts'
import { type Brush, lightMix, scale } from './brush.ts'
import type { Camera } from './camera.ts'
import { fbm2, noise2 } from './noise.ts'
import { rippleSlope } from './sand-ripples.ts'

/** Share of the sunlight that neighbouring sand returns to a shaded point; own estimate. */
const bounce = 0.05

/** Returns a function that sets the brush to the sand at X, Z; `height` as in `Landscape`. */
export function createSandShader(
  palette: Palette,
  camera: Camera,
  height: (x: number, z: number, footprintM: number) => number,
  sun: readonly [number, number, number],
  sunShare: (x: number, y: number, z: number) => number,
): (x: number, z: number, brush: Brush) => void {
  const pale = palette.of('sandPale')
  const plain = palette.of('sand')
  return (x, z, brush) => {
    const acrossM = z / camera.focalPx
    const y = height(x, z, acrossM)
    const e = Math.max(0.03, acrossM)
    let slopeX = (y - height(x - e, z, acrossM)) / e
    let slopeZ = (y - height(x, z - e, acrossM)) / e
    const drop = Math.max(0.3, camera.eyeM - y + z * slopeZ)
    const alongM = (acrossM * z) / drop
    const grainM = Math.sqrt(acrossM * alongM)
    const slip = Math.min(1, Math.max(0, (-slopeX * 0.97 - slopeZ * 0.24 - 0.36) / 0.16))
    let tone = 1
    if (slip < 1) {
      const patch = Math.min(1, Math.max(0.25, 0.8 + 0.9 * noise2(x / 9, z / 12, 50)))
      const r = rippleSlope(x, z, acrossM, alongM) * (1 - slip) * patch
      slopeX += r * 0.97
      slopeZ += r * 0.24
      tone += 0.22 * r
    }
    if (slip > 0) {
      const streak = fbm2(z * 1.3 + 0.2 * noise2(x / 2, z / 2, 51), x * 0.16, 4, 52, alongM * 1.3)
      slopeX += 0.06 * slip * streak
      slopeZ += 0.13 * slip * streak
      tone += 0.1 * slip * streak
    }
    const uneven = fbm2(x / 4.6, z / 2.3, 4, 53, alongM / 2.3)
    slopeX += 0.05 * uneven
    slopeZ += 0.05 * fbm2(x / 3.1 + 9, z / 2.2, 3, 57, alongM / 2.2)
    if (grainM < 0.012) {
      const fade = 1 - grainM / 0.012
      const grain = fbm2(x / 0.008, z / 0.02, 3, 54, acrossM / 0.008)
      slopeX += 0.12 * fade * grain
      tone += 0.1 * fade * noise2(x / 0.0021, z / 0.0055, 55) + 0.05 * fade * grain
    }
    const field = fbm2(x / 14, z / 19, 3, 56, alongM / 14)
    tone += 0.05 * field
    const n = 1 / Math.sqrt(1 + slopeX * slopeX + slopeZ * slopeZ)
    const facing = Math.max(0, (sun[1] - slopeX * sun[0] - slopeZ * sun[2]) * n)
    const seen = facing > 0 ? sunShare(x, y, z) : 0
    const toSun = (-slopeX * sun[0] - slopeZ * sun[2]) * n
    const open = (0.6 + 1.1 * toSun) * (0.5 + 0.5 * n)
    const returned = bounce * (0.55 + 0.9 * n) * (1 - 0.35 * toSun)
    lightMix(brush, plain, pale, 0.4 + 0.35 * field, facing * seen + returned, Math.max(0.1, open))
    scale(brush, tone)
  }
}
