// Things turned on an upright axis: pots, urns, posts, bowls. A profile of radius against height is met by one ray per
// quarter pixel, so rims, bellies and the inside of a bowl come out right from any height of the eye.
import { type Brush, createBrush } from './brush.ts'
import type { Camera } from './camera.ts'
import { type Band, coverIndex } from './canvas.ts'
import type { Solid } from './strokes.ts'

export interface Turned {
  readonly x: number
  readonly z: number
  /** Radius and height in metres from the foot upwards. */
  readonly profile: readonly (readonly [radius: number, y: number])[]
  /** Height of what fills it (earth, water), and its radius; left out for solid things. */
  readonly fill?: { readonly y: number; readonly radius: number }
}

/** Where a ray ends. `around` in radians, `part`: outside, inside or filling. */
interface TurnedHit {
  t: number
  x: number
  y: number
  z: number
  nx: number
  ny: number
  nz: number
  around: number
  part: 'outside' | 'inside' | 'fill'
}

export type TurnedDye = (hit: TurnedHit, fp: number, brush: Brush) => void

const wallM = 0.022

/** Nearer intersection (farther one with `far`) of the ray with a cone ring about the axis, if it beats `hit`. */
function meetRing(
  cx: number,
  cz: number,
  eye: number,
  dx: number,
  dy: number,
  r0: number,
  y0: number,
  r1: number,
  y1: number,
  far: boolean,
  hit: TurnedHit,
): void {
  const k = (r1 - r0) / (y1 - y0)
  const base = r0 + k * (eye - y0)
  const a = dx * dx + 1 - k * k * dy * dy
  const b = -dx * cx - cz - k * dy * base
  const c = cx * cx + cz * cz - base * base
  const d = b * b - a * c
  if (d < 0 || Math.abs(a) < 1e-9) return
  const t = (-b + (far ? 1 : -1) * Math.sqrt(d)) / a
  const y = eye + t * dy
  if (t <= 0.05 || t >= hit.t || y < y0 || y > y1) return
  const px = t * dx - cx
  const pz = t - cz
  const n = Math.sqrt(px * px + pz * pz) * Math.sqrt(1 + k * k) * (far ? -1 : 1)
  hit.t = t
  hit.y = y
  hit.nx = px / n
  hit.ny = (-k / Math.sqrt(1 + k * k)) * (far ? -1 : 1)
  hit.nz = pz / n
  hit.part = far ? 'inside' : 'outside'
}

/** Intersection with a level ring from `inner` to `outer` at height y, if it beats `hit`. */
function meetDisc(
  cx: number,
  cz: number,
  eye: number,
  dx: number,
  dy: number,
  y: number,
  inner: number,
  outer: number,
  part: TurnedHit['part'],
  hit: TurnedHit,
): void {
  const t = (y - eye) / dy
  if (!(t > 0.05 && t < hit.t)) return
  const px = t * dx - cx
  const pz = t - cz
  const r = px * px + pz * pz
  if (r < inner * inner || r > outer * outer) return
  hit.t = t
  hit.y = y
  hit.nx = 0
  hit.ny = 1
  hit.nz = 0
  hit.part = part
}

function meet(turned: Turned, eye: number, dx: number, dy: number, hit: TurnedHit): boolean {
  const { x: cx, z: cz, profile, fill } = turned
  hit.t = Infinity
  for (let i = 1; i < profile.length; i++) {
    const [r0, y0] = profile[i - 1]
    const [r1, y1] = profile[i]
    if (y1 - y0 < 1e-4) meetDisc(cx, cz, eye, dx, dy, y0, Math.min(r0, r1), Math.max(r0, r1), 'outside', hit)
    else meetRing(cx, cz, eye, dx, dy, r0, y0, r1, y1, false, hit)
  }
  const [rim, top] = profile[profile.length - 1]
  meetDisc(cx, cz, eye, dx, dy, top, fill ? rim - wallM : 0, rim, 'outside', hit)
  if (fill) {
    meetDisc(cx, cz, eye, dx, dy, fill.y, 0, fill.radius, 'fill', hit)
    meetRing(cx, cz, eye, dx, dy, fill.radius, fill.y, rim - wallM, top, true, hit)
  }
  if (hit.t === Infinity) return false
  hit.x = hit.t * dx
  hit.z = hit.t
  hit.around = Math.atan2(hit.x - cx, cz - hit.z)
  return true
}

export function createTurned(camera: Camera, turned: Turned, dye: TurnedDye): Solid {
  const widest = Math.max(...turned.profile.map(([r]) => r))
  const heights = turned.profile.map(([, y]) => y)
  const nearZ = turned.z - widest
  const f = camera.focalPx
  const rows = [Math.min(...heights), Math.max(...heights)].flatMap((y) =>
    [nearZ, turned.z + widest].map((z) => camera.horizonY - (f * (y - camera.eyeM)) / z),
  )
  const columns = [-widest, widest].flatMap((dx) =>
    [nearZ, turned.z].map((z) => camera.centreX + (f * (turned.x + dx)) / z),
  )
  const top = Math.floor(Math.min(...rows)) - 1
  const bottom = Math.ceil(Math.max(...rows)) + 1
  const hit: TurnedHit = { t: 0, x: 0, y: 0, z: 0, nx: 0, ny: 0, nz: 0, around: 0, part: 'outside' }
  return {
    z: turned.z + widest,
    paint(band: Band) {
      const brush = createBrush()
      const sum = createBrush()
      const x0 = Math.max(0, Math.floor(Math.min(...columns)) - 1)
      const x1 = Math.min(band.width - 1, Math.ceil(Math.max(...columns)) + 1)
      for (let y = Math.max(band.y0, top); y <= Math.min(band.y1 - 1, bottom); y++) {
        for (let x = x0; x <= x1; x++) {
          let hits = 0
          sum.r = 0
          sum.g = 0
          sum.b = 0
          for (let s = 0; s < 4; s++) {
            const dx = (x + 0.25 + 0.5 * (s & 1) - camera.centreX) / f
            const dy = (camera.horizonY - y - 0.25 - 0.5 * (s >> 1)) / f
            if (!meet(turned, camera.eyeM, dx, dy, hit)) continue
            dye(hit, hit.t / f, brush)
            sum.r += brush.r
            sum.g += brush.g
            sum.b += brush.b
            hits++
          }
          if (hits === 0) continue
          brush.r = sum.r / hits
          brush.g = sum.g / hits
          brush.b = sum.b / hits
          coverIndex(band, (y - band.y0) * band.width + x, hits / 4, brush)
        }
      }
    },
  }
}
