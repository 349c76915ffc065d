// Frame 4: inside a wood, upright, no sky in the picture, sun from ahead and to the right behind the leaves, infrared from
// 720 nm. Warm light through the canopy against neutral sun spots and the cool skin of birches is all the colour there is.
import type { Palette } from '../light/triplets.ts'
import { type Brush, createBrush, light, lightMix } from '../paint/brush.ts'
import { createCamera, groundDistance, sunDirection } from '../paint/camera.ts'
import { type Band, coverIndex } from '../paint/canvas.ts'
import { createFern, type FernDye } from '../paint/ferns.ts'
import { createFoliage } from '../paint/foliage.ts'
import { lightFoliage } from '../paint/foliage-light.ts'
import { createForestFloor } from '../paint/forest-floor.ts'
import { createLightMap } from '../paint/light-map.ts'
import { fbm2 } from '../paint/noise.ts'
import { type Dye, placeFoliage } from '../paint/place-foliage.ts'
import type { Scene } from '../paint/scene.ts'
import { createStrokes, paintStrokes, type Solid, sortStrokes } from '../paint/strokes.ts'
import { createTrunk, type TrunkDye } from '../paint/trunks.ts'
import { createWoodAir } from '../paint/wood-air.ts'
import { addLitter, addUndergrowth } from './woodland-cover.ts'
import {
  addWoodBranches,
  leafKind,
  openings,
  pathCentre,
  pathHalfWidthM,
  plantFerns,
  plantTrunks,
} from './woodland-plan.ts'

export const woodland: Scene = {
  id: 'woodland',
  title: 'In the woodland',
  aspect: 2 / 3,
  prepare(size, palette, seed) {
    const camera = createCamera(size, { focalWidths: 1.05, horizon: 0.585, eyeM: 1.55 })
    const sun = sunDirection(30, 42)
    const trunks = plantTrunks(palette, seed)
    const posts = trunks.map((t) => ({ x: t.x, z: t.z, radiusM: t.radiusM }))
    const spots = createLightMap({
      sun,
      seed,
      x0: -26,
      x1: 24,
      z0: -16,
      z1: 62,
      cellM: 0.05,
      gaps: 0.14,
      openings,
      posts,
    })
    const air = createWoodAir(palette, camera)
    const sunAt = (x: number, y: number, z: number) => {
      const high = Math.min(1, Math.max(0, (y - 2) / 9))
      const spot = spots.at(x, y, z)
      return spot + (1 - spot) * 0.7 * high
    }

    const foliage = createFoliage()
    addWoodBranches(foliage, trunks, seed)
    addUndergrowth(foliage, seed)
    addLitter(foliage, seed)
    const lit = lightFoliage(foliage, { sun, cellM: 0.4, extinction: 0.2 })
    const strokes = createStrokes()
    placeFoliage(strokes, foliage, lit, camera, sun, leafDye(palette, sunAt, air.veil))
    sortStrokes(strokes)

    const trunkDye: TrunkDye = (brush, first, second, share, x, y, z, facing) => {
      const direct = Math.max(0, facing[0] * sun[0] + facing[1] * sun[1] + facing[2] * sun[2]) * sunAt(x, y, z)
      const canopy = 0.085 + 0.075 * facing[0] - 0.03 * facing[2]
      lightMix(brush, first, second, share, direct * 1.1, 0.55, 0, canopy)
      air.veil(brush, x, y, z)
    }
    const moss = palette.of('grass')
    const fern = palette.of('pine')
    const fernDye: FernDye = (x, y, z, nx, ny, nz, depth, tint, stem, brush) => {
      const n = Math.sqrt(nx * nx + ny * ny + nz * nz)
      const toSun = (nx * sun[0] + ny * sun[1] + nz * sun[2]) / n
      const toEye = -(nx * x + ny * (y - camera.eyeM) + nz * z)
      const angle = toSun * toEye > 0 ? Math.abs(toSun) : 0.7 * Math.abs(toSun)
      const shade = 1 - 0.8 * depth
      light(
        brush,
        fern,
        spots.at(x, y, z) * angle * (0.35 + 0.65 * shade),
        0.3 * shade,
        0,
        (0.02 + 0.13 * shade) * (0.45 + 0.55 * Math.max(0, ny / n)) * (1 + 0.4 * tint),
      )
      if (stem) brush.r *= 0.7
      if (stem) brush.g *= 0.7
      if (stem) brush.b *= 0.7
      air.veil(brush, x, y, z)
    }
    const solids: Solid[] = [
      ...trunks.map((t) => createTrunk(camera, t, moss, trunkDye)),
      ...plantFerns(trunks, seed).map((f) => createFern(camera, f, fernDye)),
    ].toSorted((a, b) => b.z - a.z)

    const floor = createForestFloor(palette, seed + 50)
    const paintGround = (band: Band, brush: Brush) => {
      const start = Math.max(band.y0, Math.ceil(camera.horizonY))
      for (let row = start; row < band.y1; row++) {
        const z = Math.min(70, groundDistance(camera, row + 0.5))
        const fp = (z / camera.focalPx) * Math.max(1, Math.min(3, z / camera.eyeM / 3))
        const middle = pathCentre(z)
        for (let px = 0; px < band.width; px++) {
          const x = ((px + 0.5 - camera.centreX) * z) / camera.focalPx
          const off = Math.abs(x - middle) - pathHalfWidthM * (1 + 0.25 * fbm2(z / 1.3, x > middle ? 0 : 9, 2, seed))
          const direct = spots.at(x, 0, z)
          floor.colour(brush, x, z, off, fp, direct * sun[1], 0.5, off > 0.3 ? 0.07 : 0.12)
          air.veil(brush, x, 0, z)
          coverIndex(band, (row - band.y0) * band.width + px, 1, brush)
        }
      }
    }
    return {
      paint(band) {
        const brush = createBrush()
        air.paintBackground(band)
        paintGround(band, brush)
        paintStrokes(band, strokes, solids)
      },
    }
  },
}

function leafDye(
  palette: Palette,
  spotAt: (x: number, y: number, z: number) => number,
  veil: (brush: Brush, x: number, y: number, z: number) => void,
): Dye {
  const leaf = palette.of('leaf')
  const yellow = palette.of('yellowLeaf')
  const litter = palette.of('driedLeaf')
  const herb = palette.of('mapleLeaf')
  const bark = palette.of('bark')
  return {
    leaf(part, brush) {
      const spot = spotAt(part.x, part.y, part.z)
      const direct = part.sun * spot
      const vary = 1 + 0.28 * part.tint
      if (part.kind === leafKind.shadow) {
        light(brush, litter, direct * 0.22, 0.2, 0, 0.03)
        return
      }
      const base = part.kind === leafKind.fallen ? litter : part.kind === leafKind.herb ? herb : leaf
      const canopy = (0.05 + 0.2 * part.sky) * vary * (part.y < 0.2 ? 0.4 + 3 * part.y : 1)
      lightMix(brush, base, yellow, part.tint > 0.6 ? 0.6 : 0, direct * vary * 1.15, 0.3 * part.sky, 0, canopy)
      veil(brush, part.x, part.y, part.z)
    },
    limb(part, brush) {
      const spot = spotAt(part.x, part.y, part.z)
      light(brush, bark, part.sun * spot * 0.7, 0.3, 0, 0.06 + 0.06 * part.sky)
      veil(brush, part.x, part.y, part.z)
    },
  }
}
