// Door and windows of the courtyard's house, set back in the wall.
import type { Palette } from '../light/triplets.ts'
import { type Brush, light, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import type { Band } from '../paint/canvas.ts'
import type { Surroundings } from '../paint/lit-face.ts'
import { createFaceSun } from '../paint/sun-casters.ts'
import { createPlanks } from '../paint/planks.ts'
import { createRecess, type Niche } from '../paint/recess.ts'
import { createSash } from '../paint/sash.ts'
import { createSurface, lightSurface, smoothStep } from '../paint/surface.ts'
import { fbm2 } from '../paint/noise.ts'
import { door, farWall, wallZ, windows } from './courtyard-plan.ts'

export function createCourtyardOpenings(
  camera: Camera,
  palette: Palette,
  seed: number,
  around: Surroundings,
): ((band: Band) => void)[] {
  const { sun } = around
  const plaster = palette.of('plaster')
  const iron = palette.of('metal')
  const surface = createSurface(plaster)
  const wallSun = createFaceSun(farWall, around.casters, sun)
  const boards = createPlanks(palette.of('timber'), palette.of('asphalt'), seed + 60, 0.145, 0.05)

  const sunInto = (niche: Niche) => {
    if (niche.sun <= 0) return 0
    const facing = niche.nx * sun[0] + niche.ny * sun[1] + niche.nz * sun[2]
    if (facing <= 0) return 0
    const out = niche.depth / -sun[2]
    const x = niche.x + sun[0] * out
    const y = niche.y + sun[1] * out
    return facing * niche.sun * wallSun(x - farWall.corner[0], y, x, y, wallZ)
  }
  const reveal = (niche: Niche, brush: Brush) => {
    const fine = fbm2((niche.x + niche.y) / 0.06, niche.depth / 0.06 + niche.y / 0.05, 5, seed + 61, niche.fp / 0.06)
    surface.first = plaster
    surface.share = 0
    surface.tone = 0.92 * (1 + 0.1 * fine)
    surface.relief = 0.15 * fine
    surface.hollow = 0.45 + 0.35 * (niche.ny < -0.3 ? 1 : 0)
    const { x, y } = niche
    lightSurface(
      brush,
      surface,
      sunInto(niche),
      0.4 * around.sky(x, y, wallZ, [0, 0, -1]),
      1.3 * around.bounce(x, y, wallZ, [0, 0, -1]),
    )
  }

  const middle = (door.x0 + door.x1) / 2
  const doorPainter = createRecess(camera, { wallZ, depthM: 0.26, opening: door, sun }, (niche, brush) => {
    if (!niche.back) {
      reveal(niche, brush)
      return
    }
    const { x, y, fp } = niche
    boards(x - door.x0, y, fp, surface)
    const strap = Math.min(Math.abs(y - 0.42), Math.abs(y - 1.62)) - 0.03
    const strapEnd = x - door.x0 - 0.06
    const ring = Math.abs(Math.hypot(x - door.x1 + 0.2, y - 1.02) - 0.045) - 0.009
    const metal = Math.min(Math.max(strap, strapEnd - 0.85), ring)
    const direct = sunInto(niche)
    const skyShare = 0.75 * around.sky(x, y, wallZ, [0, 0, -1])
    const back = around.bounce(x, y, wallZ, [0, 0, -1])
    if (metal < 0) {
      light(brush, iron, direct + back, skyShare)
      scale(brush, 0.75 + 0.3 * fbm2(x / 0.02, y / 0.02, 3, seed + 62))
      brush.sun = direct
      return
    }
    const shadow = smoothStep(0, 0.012, metal)
    const gap = smoothStep(0.006, 0.001, Math.abs(x - middle - 0.002) + (y > 0.02 ? 1 : 0))
    surface.tone *= (0.55 + 0.45 * shadow) * (1 - 0.8 * gap) * (0.7 + 0.3 * smoothStep(0, 0.3, y))
    lightSurface(brush, surface, direct, skyShare, back)
  })

  const windowPainters = windows.map((opening, i) => {
    const sash = createSash(palette, {
      opening,
      panesAcross: 4,
      panesUp: 3,
      seed: seed + 70 + i,
      curtain: [0.32, 0.05, 0.4, 0.25, 0.5][i],
    })
    return createRecess(camera, { wallZ, depthM: 0.13, opening, sun }, (niche, brush) => {
      if (!niche.back) reveal(niche, brush)
      else {
        const { x, y } = niche
        sash(
          niche,
          sunInto(niche),
          0.7 * around.sky(x, y, wallZ, [0, 0, -1]),
          around.bounce(x, y, wallZ, [0, 0, -1]),
          brush,
        )
      }
    })
  })
  return [doorPainter, ...windowPainters]
}
