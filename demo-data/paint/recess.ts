// What lies in an opening, set back from the wall: the back (door leaf, window) and the reveal around it, with the shadow
// that the edge of the opening casts inwards. One ray per pixel finds whether it ends on the back or on the reveal.
import { type Brush, createBrush } from './brush.ts'
import type { Camera } from './camera.ts'
import type { Band } from './canvas.ts'
import { createFace, createFacePainter } from './face.ts'
import { insideOpening, type Opening, openingTop } from './opening.ts'
import { sunRadius } from './sun-casters.ts'
import type { Vector } from './vector.ts'

/** A point inside the opening. `depth` metres behind the wall; `nx`, `ny`, `nz` = direction it faces. */
export interface Niche {
  x: number
  y: number
  depth: number
  nx: number
  ny: number
  nz: number
  /** On the back rather than the reveal. */
  back: boolean
  /** Share of direct sun that the opening lets in, 0…1, before the angle of incidence. */
  sun: number
  /** Width of the pixel in metres. */
  fp: number
}

export interface RecessOptions {
  readonly wallZ: number
  readonly depthM: number
  readonly opening: Opening
  readonly sun: Vector
}

export function createRecess(
  camera: Camera,
  options: RecessOptions,
  shade: (niche: Niche, brush: Brush) => void,
): (band: Band) => void {
  const { wallZ, depthM, opening, sun } = options
  const brush = createBrush()
  const niche: Niche = { x: 0, y: 0, depth: 0, nx: 0, ny: 0, nz: -1, back: true, sun: 0, fp: 0 }
  const top = openingTop(opening)
  const face = createFace(
    [opening.x0, opening.y0, wallZ],
    [1, 0, 0],
    [0, 1, 0],
    opening.x1 - opening.x0,
    top - opening.y0,
  )
  return createFacePainter(camera, face, brush, (spot) => {
    const inside = insideOpening(opening, spot.x, spot.y)
    spot.cover = Math.min(1, Math.max(0, inside / spot.fpU + 0.5))
    if (spot.cover <= 0) return
    const dx = spot.x / wallZ
    const dy = (spot.y - camera.eyeM) / wallZ
    let depth = depthM
    if (insideOpening(opening, spot.x + dx * depthM, spot.y + dy * depthM) < 0) {
      let near = 0
      for (let i = 0; i < 9; i++) {
        const middle = (near + depth) / 2
        if (insideOpening(opening, spot.x + dx * middle, spot.y + dy * middle) < 0) depth = middle
        else near = middle
      }
    }
    const x = spot.x + dx * depth
    const y = spot.y + dy * depth
    niche.back = depth === depthM
    if (niche.back) {
      niche.nx = 0
      niche.ny = 0
      niche.nz = -1
    } else {
      const e = 0.002
      const gx = insideOpening(opening, x + e, y) - insideOpening(opening, x - e, y)
      const gy = insideOpening(opening, x, y + e) - insideOpening(opening, x, y - e)
      const n = Math.hypot(gx, gy) || 1
      niche.nx = gx / n
      niche.ny = gy / n
      niche.nz = 0
    }
    const out = depth / -sun[2]
    const soft = out * sunRadius + 0.002
    const enters = insideOpening(opening, x + sun[0] * out, y + sun[1] * out)
    niche.sun = sun[2] < 0 ? Math.min(1, Math.max(0, enters / (2 * soft) + 0.5)) : 0
    niche.x = x
    niche.y = y
    niche.depth = depth
    niche.fp = spot.fpU
    shade(niche, brush)
  })
}
