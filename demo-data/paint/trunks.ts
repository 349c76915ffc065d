// Standing trunks: round, leaning a little, flaring into roots at the foot, mossy low down on one side. Light is worked out
// on the curved surface, so sun from behind draws a bright edge.
import type { Material } from '../light/triplets.ts'
import type { Bark, BarkSpot } from './bark.ts'
import { type Brush, createBrush } from './brush.ts'
import type { Camera } from './camera.ts'
import { coverIndex } from './canvas.ts'
import { fbm2, noise2 } from './noise.ts'
import type { Solid } from './strokes.ts'
import type { Vector } from './vector.ts'

export interface Trunk {
  readonly x: number
  readonly z: number
  readonly radiusM: number
  /** Sideways metres per metre of height. */
  readonly lean: number
  /** Height where the trunk ends, metres. */
  readonly topM: number
  readonly bark: Bark
  readonly skin: Material
  readonly second: Material
  readonly seed: number
}

/** Light on a point of a trunk; sets the brush to `first` and `second` mixed. `facing` = direction of the surface. */
export type TrunkDye = (
  brush: Brush,
  first: Material,
  second: Material,
  share: number,
  x: number,
  y: number,
  z: number,
  facing: Vector,
) => void

export function createTrunk(camera: Camera, trunk: Trunk, moss: Material, dye: TrunkDye): Solid {
  const f = camera.focalPx
  const { x: baseX, z, radiusM, seed } = trunk
  const foot = camera.horizonY + (f * camera.eyeM) / z
  const spread = radiusM * 0.3
  const bottom = foot + (f * camera.eyeM * spread) / (z * z) + 2
  const top = camera.horizonY - (f * (trunk.topM - camera.eyeM)) / z
  const pixelM = z / f
  return {
    z,
    paint(band) {
      if (bottom < band.y0 || top > band.y1) return
      const brush = createBrush()
      const spot: BarkSpot = { lightness: 1, relief: 0, second: 0 }
      const facing: [number, number, number] = [0, 0, -1]
      const first = Math.max(band.y0, Math.floor(top))
      const last = Math.min(band.y1 - 1, Math.floor(bottom))
      for (let row = first; row <= last; row++) {
        const y = camera.eyeM + ((camera.horizonY - row - 0.5) / f) * z
        const flare = 1 + 0.75 * Math.exp(-Math.max(0, y) / (radiusM * 0.8)) + 0.25 * Math.exp(-Math.max(0, y) / 1.1)
        const taper = 1 - 0.022 * Math.max(0, y) + 0.05 * noise2(y / 0.9, 0, seed + 1)
        const sway = trunk.lean * y + 0.12 * radiusM * noise2(y / 2.2, 3, seed + 2)
        const knobL = 0.035 * fbm2(y / 0.16, 1, 3, seed + 3, pixelM / 0.16)
        const knobR = 0.035 * fbm2(y / 0.16, 9, 3, seed + 4, pixelM / 0.16)
        const r = radiusM * flare * taper
        const centre = camera.centreX + (f * (baseX + sway)) / z
        const rPx = (f * r) / z
        const left = centre - rPx * (1 + knobL)
        const right = centre + rPx * (1 + knobR)
        const ground = y < 0.1 ? footCover(row, foot, bottom - foot - 2, seed) : null
        const x0 = Math.max(0, Math.floor(left))
        const x1 = Math.min(band.width - 1, Math.floor(right))
        const mossy = 0.62 * Math.exp(-Math.max(0, y) / 0.55)
        for (let px = x0; px <= x1; px++) {
          const edge = Math.min(px + 1 - left, right - px, 1)
          let cover = edge * Math.min(1, 2 * rPx)
          const q = Math.max(-1, Math.min(1, (px + 0.5 - centre) / (rPx * (px + 0.5 < centre ? 1 + knobL : 1 + knobR))))
          if (ground) cover *= ground(q)
          if (cover <= 0) continue
          const theta = Math.asin(q)
          const around = theta * radiusM + 7 * seed
          trunk.bark(around, y - 0.15 * Math.abs(q) * radiusM, pixelM, seed, spot)
          const lobes = flare > 1.05 ? (flare - 1) * 0.9 * Math.sin(theta * 5 + seed) : 0
          const bent = Math.max(-1, Math.min(1, q + 0.42 * spot.relief + 0.5 * lobes))
          facing[0] = bent
          facing[2] = -Math.sqrt(1 - bent * bent)
          const green = mossShare(around, y, pixelM, seed, mossy + 0.22 * (q < 0 ? -q : 0) - 0.12)
          dye(
            brush,
            trunk.skin,
            green > 0.02 ? moss : trunk.second,
            green > 0.02 ? green : spot.second,
            baseX + sway + q * r,
            y,
            z,
            facing,
          )
          const k = Math.max(0.12, spot.lightness) * (1 - 0.25 * green) * (0.45 + 0.55 * Math.min(1, (y + 0.12) / 0.35))
          brush.r *= k
          brush.g *= k
          brush.b *= k
          coverIndex(band, (row - band.y0) * band.width + px, cover, brush)
        }
      }
    },
  }
}

function mossShare(around: number, y: number, pixelM: number, seed: number, amount: number): number {
  if (amount < -0.1) return 0
  const n = fbm2(around / 0.16, y / 0.2, 5, seed + 21, pixelM / 0.16)
  return Math.max(0, Math.min(0.9, (n * 0.55 + amount * 1.5 - 0.25) * 3))
}

/** Lower edge of the foot: roots reach the ground at uneven rows. Returns cover by position across, −1…1. */
function footCover(row: number, foot: number, reachPx: number, seed: number): (q: number) => number {
  return (q) => {
    const root = 0.5 + 0.5 * Math.sin(q * 7 + seed) + 0.5 * noise2(q * 5, 1, seed + 8)
    return Math.max(0, Math.min(1, foot + (1 - 0.8 * q * q) * (0.3 + 0.7 * root) * reachPx - row))
  }
}
