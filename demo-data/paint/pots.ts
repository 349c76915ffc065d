// Flower pots: clay or stone profiles, turned, with rings from the wheel, lime bloom and dark, damp feet, and earth inside.
import type { Material, Palette } from '../light/triplets.ts'
import type { Brush } from './brush.ts'
import type { Camera } from './camera.ts'
import { createFace, type Face } from './face.ts'
import type { Surroundings } from './lit-face.ts'
import { fbm2, noise2 } from './noise.ts'
import type { Solid } from './strokes.ts'
import { sunPast } from './sun-casters.ts'
import { createSurface, lightSurface, smoothStep } from './surface.ts'
import { createTurned, type Turned } from './turned.ts'

export interface Pot {
  readonly x: number
  readonly z: number
  readonly radiusM: number
  readonly heightM: number
  readonly kind: 'clay' | 'bowl' | 'tub'
  readonly seed: number
}

const shapes = {
  clay: [
    [0.62, 0],
    [0.66, 0.02],
    [0.9, 0.78],
    [1, 0.78],
    [1.02, 0.98],
    [1, 1],
  ],
  bowl: [
    [0.5, 0],
    [0.5, 0.06],
    [0.44, 0.14],
    [0.74, 0.42],
    [0.92, 0.8],
    [1, 0.9],
    [1, 1],
  ],
  tub: [
    [0.84, 0],
    [0.93, 0.3],
    [0.95, 0.62],
    [0.9, 0.9],
    [0.97, 0.92],
    [0.97, 1],
  ],
} as const

function potProfile(pot: Pot): Turned {
  const { x, z, radiusM, heightM } = pot
  const profile = shapes[pot.kind].map(([r, y]) => [r * radiusM, y * heightM] as const)
  return { x, z, profile, fill: { y: heightM * 0.93, radius: radiusM * 0.93 - 0.02 } }
}

/** Flat stand-ins that cast the pot's shadow: its body and its rim, square to the sun. */
export function potCasters(pot: Pot, sunX: number, sunZ: number): Face[] {
  const flat = Math.hypot(sunX, sunZ)
  const ax = sunZ / flat
  const az = -sunX / flat
  const plate = (r: number, y0: number, y1: number) =>
    createFace([pot.x - ax * r, y0, pot.z - az * r], [ax, 0, az], [0, 1, 0], 2 * r, y1 - y0)
  const profile = shapes[pot.kind]
  const plates: Face[] = []
  for (let i = 1; i < profile.length; i++) {
    const from = profile[i - 1][1] * pot.heightM
    const to = profile[i][1] * pot.heightM
    const steps = to - from > 0.004 ? Math.ceil((to - from) / 0.09) : 0
    for (let s = 0; s < steps; s++) {
      const t = (s + 0.5) / steps
      const r = (profile[i - 1][0] * (1 - t) + profile[i][0] * t) * pot.radiusM
      plates.push(plate(r, from + ((to - from) * s) / steps - 0.004, from + ((to - from) * (s + 1)) / steps + 0.004))
    }
  }
  return plates
}

/** `clay` = what the pot is made of. Its own shadow comes from the angle of its surface alone. */
export function createPot(
  camera: Camera,
  palette: Palette,
  pot: Pot,
  clay: Material,
  around: Surroundings,
  casters: readonly Face[],
): Solid {
  const bloom = palette.of('limestone')
  const earth = palette.of('soil')
  const surface = createSurface(clay)
  const { seed, heightM, radiusM } = pot
  return createTurned(camera, potProfile(pot), (hit, fp, brush: Brush) => {
    const { sun } = around
    const earthy = hit.part === 'fill'
    const u = earthy ? hit.x : hit.around * radiusM
    const v = earthy ? hit.z : hit.y
    const fine = fbm2(u / 0.03, v / 0.03, 6, seed + 2, fp / 0.03)
    const rings = noise2(hit.y / 0.012, u / 0.9, seed + 3) * smoothStep(0.01, 0.003, fp)
    const patch = fbm2(u / 0.14, hit.y / 0.11, 5, seed + 4, fp / 0.14)
    let own = 1
    if (earthy) {
      surface.first = earth
      surface.second = bloom
      surface.share = 0.08
      surface.tone = 0.9 * (1 + 0.5 * fine)
      surface.relief = 0.5 * fine
      surface.hollow = 0.35
      own = 0.5
    } else {
      surface.first = clay
      surface.second = bloom
      surface.share = 0.75 * smoothStep(0.12, 0.6, patch + 0.25 * smoothStep(0.3, 1, hit.y / heightM))
      surface.tone = (1 + 0.2 * fine + 0.08 * rings) * (1 - 0.35 * smoothStep(0.09, 0, hit.y + 0.03 * patch))
      surface.relief = 0.2 * rings + 0.24 * fine
      surface.hollow = hit.part === 'inside' ? 0.5 : 0
      if (hit.part === 'inside') own = hit.nx * sun[0] + hit.nz * sun[2] > 0 ? smoothStep(0.85, 1, hit.y / heightM) : 0
    }
    const facing = Math.max(0, hit.nx * sun[0] + hit.ny * sun[1] + hit.nz * sun[2])
    const direct = facing > 0 ? facing * own * sunPast(casters, sun, hit.x, hit.y, hit.z) : 0
    const low = smoothStep(-0.02, 0.12, hit.y)
    const n = [hit.nx, hit.ny, hit.nz] as const
    const skyShare = around.sky(hit.x, hit.y, hit.z, n) * (0.35 + 0.65 * low) * (0.72 + 0.28 * hit.ny)
    lightSurface(brush, surface, direct, skyShare, around.bounce(hit.x, hit.y, hit.z, n) * (0.4 + 0.6 * low))
  })
}

/** Darkening of the ground around a pot's foot, 0…1 as a factor on sky and returned light. */
export function footShade(pots: readonly Pot[], x: number, z: number): number {
  let open = 1
  for (const pot of pots) {
    const dx = x - pot.x
    const dz = z - pot.z
    if (dx > 1 || dx < -1 || dz > 1 || dz < -1) continue
    const d = Math.sqrt(dx * dx + dz * dz) - pot.radiusM * shapes[pot.kind][0][0]
    if (d < 0.6) open *= 1 - 0.7 * Math.exp(-Math.max(0, d) / (0.22 * pot.heightM))
  }
  return open
}
