// Textures of the courtyard's walls: plaster with its stone surround and brick lintels, boards, stone, and what the light
// between the walls is like.
import type { Palette } from '../light/triplets.ts'
import { createBrickwork } from '../paint/brickwork.ts'
import { hashUnit } from '../paint/hash.ts'
import { sunOn, type Surroundings } from '../paint/lit-face.ts'
import { fbm2 } from '../paint/noise.ts'
import { insideOpening, openingTop } from '../paint/opening.ts'
import { createPlaster } from '../paint/plaster.ts'
import { footShade } from '../paint/pots.ts'
import { smoothStep, type Texture } from '../paint/surface.ts'
import type { Vector } from '../paint/vector.ts'
import { door, eavesM, farWall, leftX, pots, rightX, solidCasters, wallZ, windows } from './courtyard-plan.ts'

/** The house wall: plaster, cut stones around the door, a soldier course over every window. */
export function createHouseWall(palette: Palette, seed: number, sun: Vector): Texture {
  const slope = sunOn(farWall, sun)
  const plaster = createPlaster(palette, seed, slope, 0.62, eavesM)
  const lintel = createBrickwork(palette, seed + 3, { u: slope.v, v: slope.u }, 0.1)
  const limestone = palette.of('limestone')
  const concrete = palette.of('concrete')
  const x0 = farWall.corner[0]
  const middle = (door.x0 + door.x1) / 2
  return (u, v, fp, out) => {
    const x = u + x0
    const away = -insideOpening(door, x, v)
    if (away > -0.01 && away < 0.21) {
      const angle = Math.atan2(v - door.y1, x - middle)
      const along = v > door.y1 ? angle * 0.75 : v
      const block = Math.floor(along / 0.34 + (x > middle ? 0.3 : 0))
      const within = (along / 0.34 + (x > middle ? 0.3 : 0) - block) * 0.34
      const edge = Math.min(within, 0.34 - within, 0.21 - away)
      const joint = smoothStep(0.007 + fp, 0.002, edge)
      const fine = fbm2(u / 0.04, v / 0.04, 6, seed + 5, fp / 0.04)
      const h = hashUnit(block, x > middle ? 1 : 2, seed, 8)
      out.first = limestone
      out.second = concrete
      out.share = 0.3 + 0.5 * h
      out.tone = (1.1 + 0.35 * h) * (1 + 0.14 * fine) * (1 - 0.45 * joint)
      out.relief = 0.25 * fine - 0.4 * joint
      out.hollow = 0.5 * joint
      return
    }
    for (const w of windows) {
      const over = v - openingTop(w)
      if (over > 0 && over < 0.235 && x > w.x0 - 0.12 && x < w.x1 + 0.12) {
        lintel(over + 0.002, u, fp, out)
        return
      }
    }
    plaster(u, v, fp, out)
  }
}

/** Light between the walls: open to the sky above, closed by the wing and the eaves, warmed by sunlit stone. */
export function courtyardLight(sun: Vector): Surroundings {
  return {
    sun,
    casters: solidCasters,
    sky(x, y, z, normal) {
      const level = normal[1] > 0.5
      let open = 0.25 + 0.75 * (0.5 + 0.5 * normal[1])
      open *= 0.75 - 0.45 * Math.exp(-(rightX - x) / 1.6) * smoothStep(5, 1, y)
      if (x < leftX + 2) open *= 1 - 0.35 * Math.exp(-Math.max(0, x - leftX) / 0.5) * smoothStep(2.4, 1.2, y)
      if (normal[2] < -0.5 && y > eavesM - 0.7) open *= 1 - 0.65 * smoothStep(eavesM - 0.7, eavesM, y)
      if (level && z > wallZ - 3) open *= 1 - 0.4 * Math.exp(-(wallZ - z) / 0.5)
      if (level) open *= footShade(pots, x, z)
      else if (y < 1) open *= 1 - 0.35 * Math.exp(-y / 0.2)
      return open
    },
    bounce(x, y, z, normal) {
      const near = Math.exp(-Math.max(0, x + 0.3) / 4.5)
      const level = normal[1] > 0.5 ? 0.07 : 0.12 + 0.07 * Math.exp(-y / 1.4)
      const foot = normal[1] > 0.5 ? footShade(pots, x, z) : 1
      return level * (0.45 + 0.75 * near) * foot
    },
  }
}
