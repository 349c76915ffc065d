// The barn: a gable of weathered boards with a half-open door, a side wall running away, a rusting roof. Everything is
// placed on planes in space; the same barn is painted once more from below the ground for the puddles.
import type { Palette } from '../light/triplets.ts'
import { boardAt, type BoardSpot } from '../paint/boards.ts'
import { type Brush, createBrush, light, lightMix, scale } from '../paint/brush.ts'
import type { Camera } from '../paint/camera.ts'
import type { Band } from '../paint/canvas.ts'
import { hashUnit } from '../paint/hash.ts'
import { fbm2 } from '../paint/noise.ts'
import { paintPlane, type Plane, raised } from '../paint/plane.ts'
import { type RoofSpot, sheetAt } from '../paint/sheet-roof.ts'
import type { Solid } from '../paint/strokes.ts'
import {
  door,
  eavesM,
  front,
  leftRoof,
  lengthM,
  near,
  overhang,
  ridgeM,
  rise,
  roof,
  side,
  slopeM,
  widthM,
} from './barn-shape.ts'

export function createBarn(camera: Camera, palette: Palette, seed: number): Solid {
  const timber = palette.of('timber')
  const wood = palette.of('wood')
  const metal = palette.of('metal')
  const rust = palette.of('rust')
  const lichen = palette.of('lichen')
  const stone = palette.of('rock')
  const dark = palette.of('asphalt')
  const soil = palette.of('soil')
  const white = palette.of('white')
  const spot: BoardSpot = { lightness: 1, fresh: 0, gap: 0 }
  const sheet: RoofSpot = { lightness: 1, rust: 0 }

  const boards = (brush: Brush, s: number, t: number, along: number, rises: number, own: number, open: number) => {
    boardAt(s, t, along, rises, own, spot)
    const damp = Math.exp(-Math.max(0, t) / 0.55)
    const green = Math.max(0, damp * 0.5 + 0.35 * fbm2(s / 0.4, t / 0.5, 3, own + 31, along / 0.4) - 0.2)
    lightMix(
      brush,
      timber,
      green > 0.25 ? lichen : wood,
      green > 0.25 ? 0.3 * green : 0.5 * spot.fresh,
      0,
      0,
      0.6 * open,
      0.05,
    )
    scale(brush, spot.lightness * (1 - 0.36 * damp) * (1 - spot.gap * 0.93))
  }
  const shadeUnder = (below: number) => 1 - 0.55 * Math.exp(-Math.max(0, below) / 0.4)

  const paintSide = (band: Band, brush: Brush) => {
    const corners = [
      [0, 0],
      [lengthM, 0],
      [lengthM, eavesM],
      [0, eavesM],
    ] as const
    paintPlane(band, camera, side, corners, brush, (s, t, along, rises) => {
      if (t < 0.42 + 0.03 * fbm2(s / 0.3, 1, 2, seed)) {
        const n = fbm2(s / 0.22, t / 0.12, 4, seed + 61, along / 0.22)
        lightMix(brush, stone, lichen, 0.25, 0, 0, 0.5, 0.05)
        scale(brush, 0.75 + 0.35 * n)
        return
      }
      boards(brush, s, t, along, rises, seed + 40, 0.72 * shadeUnder(eavesM - t))
    })
    for (const at of [2.6, 6.4, 10.2]) paintWindow(band, brush, side, at, 1.5, 1.0, 1.15)
  }

  const paintWindow = (band: Band, brush: Brush, wall: Plane, s0: number, t0: number, w: number, h: number) => {
    const frame = 0.09
    const ring = (grow: number) =>
      [
        [s0 - grow, t0 - grow],
        [s0 + w + grow, t0 - grow],
        [s0 + w + grow, t0 + h + grow],
        [s0 - grow, t0 + h + grow],
      ] as const
    paintPlane(band, camera, raised(wall, 0.02), ring(frame), brush, (s, t, along) => {
      lightMix(brush, timber, wood, 0.4, 0, 0, 0.62)
      scale(brush, 1 + 0.25 * fbm2(s / 0.3, t / 0.3, 3, seed + 71, along / 0.3))
    })
    paintPlane(band, camera, wall, ring(0), brush, (s, t) => {
      const bar = Math.abs(s - s0 - w / 2) < 0.025 || Math.abs(t - t0 - h / 2) < 0.02
      const pane = (s > s0 + w / 2 ? 1 : 0) + (t > t0 + h / 2 ? 2 : 0)
      const whole = hashUnit(pane, seed, Math.round(s0 * 10))
      if (bar) lightMix(brush, timber, wood, 0.4, 0, 0, 0.5)
      else light(brush, white, 0, 0, whole > 0.3 ? 0.035 + 0.07 * whole * (t - t0) : 0.006)
    })
  }

  const paintFront = (band: Band, brush: Brush) => {
    const gable = [
      [0, 0],
      [widthM, 0],
      [widthM, eavesM],
      [widthM / 2, ridgeM],
      [0, eavesM],
    ] as const
    paintPlane(band, camera, front, gable, brush, (s, t, along, rises) => {
      if (t < 0.1 + 0.03 * fbm2(s / 0.3, 1, 2, seed)) {
        lightMix(brush, stone, soil, 0.4, 0, 0, 0.5)
        scale(brush, 0.8 + 0.4 * fbm2(s / 0.16, t / 0.1, 4, seed + 61, along / 0.16))
        return
      }
      const below = eavesM + (rise * (widthM / 2 - Math.abs(s - widthM / 2))) / (widthM / 2) - t
      boards(brush, s, t, along, rises, seed, 1.06 * shadeUnder(below))
    })
    const inside = [
      [door.from, 0],
      [door.to, 0],
      [door.to, door.top],
      [door.from, door.top],
    ] as const
    paintPlane(band, camera, front, inside, brush, (s, t, along) => {
      const depth = t < camera.eyeM * 0.95 ? (t * door.distance) / (Math.abs(camera.eyeM) - t) : 99
      if (depth < lengthM) {
        lightMix(brush, soil, timber, 0.3, 0, 0, 0.62 * Math.exp(-depth / 1.8) + 0.02)
        scale(brush, 1 + 0.3 * fbm2(s * 4, depth * 2, 4, seed + 77, along * 4))
        return
      }
      lightMix(brush, dark, timber, 0.4, 0, 0, 0.035)
      const board = Math.floor(s * 4.3)
      const own = hashUnit(board, seed, 9)
      const from = s * 4.3 - board
      const thin = Math.min(1, (0.012 + 0.03 * own) / Math.max(0.01, along * 4.3))
      const lit = from < Math.max(0.03, along * 4.3) && t > 0.75 + own && t < 2.2 + 0.9 * hashUnit(board, seed, 8)
      if (lit && own > 0.25) light(brush, white, 0, 0, 0.16 * own * thin * (0.6 + 0.4 * fbm2(t / 0.2, board, 3, seed)))
    })
    const leaf = raised(front, 0.09)
    const doorway = [
      [door.from - 0.15, 0.05],
      [door.open, 0.05],
      [door.open, door.top + 0.1],
      [door.from - 0.15, door.top + 0.1],
    ] as const
    paintPlane(band, camera, leaf, doorway, brush, (s, t, along, rises) => {
      boards(brush, s + 40, t + 0.3, along, rises, seed + 5, 0.97)
      const w = door.open - door.from
      const brace = Math.abs(t - 0.35 - ((s - door.from) / w) * (door.top - 0.7)) < 0.11
      const ledge = Math.abs(t - 0.35) < 0.1 || Math.abs(t - door.top + 0.3) < 0.1
      if (brace || ledge) {
        const grain = fbm2(s / 0.4, t / 0.012, 4, seed + 81, rises / 0.012)
        lightMix(brush, timber, wood, 0.25, 0, 0, 0.62)
        scale(brush, 1.05 + 0.22 * grain)
      }
    })
    const rail = [
      [door.from - 1.9, door.top + 0.12],
      [door.to + 0.5, door.top + 0.12],
      [door.to + 0.5, door.top + 0.24],
      [door.from - 1.9, door.top + 0.24],
    ] as const
    paintPlane(band, camera, raised(front, 0.12), rail, brush, (s, t, along) => {
      lightMix(brush, rust, metal, 0.3, 0, 0, 0.55)
      scale(brush, 0.8 + 0.3 * fbm2(s / 0.2, t / 0.05, 3, seed + 83, along / 0.2))
    })
    paintWindow(band, brush, front, widthM / 2 - 0.5, 4.7, 1.0, 0.95)
    paintSoffit(band, brush)
    paintBarge(band, brush, -1)
    paintBarge(band, brush, 1)
  }

  const paintSoffit = (band: Band, brush: Brush) => {
    const long = slopeM + 0.4
    paintPlane(
      band,
      camera,
      leftRoof,
      [
        [0, 0],
        [overhang, 0],
        [overhang, long],
        [0, long],
      ],
      brush,
      (s, t, along) => {
        lightMix(brush, timber, wood, 0.3, 0, 0, 0.3)
        scale(brush, 0.9 + 0.3 * fbm2(s / 0.05, t / 0.6, 3, seed + 95, along / 0.05))
      },
    )
  }

  const paintBarge = (band: Band, brush: Brush, hand: number) => {
    const middle = widthM / 2
    const end = middle + hand * (middle + 0.32)
    const low = eavesM - (0.32 * rise) / middle
    const corners = [
      [middle, ridgeM + 0.12],
      [end, low + 0.12],
      [end, low - 0.1],
      [middle, ridgeM - 0.12],
    ] as const
    paintPlane(band, camera, raised(front, overhang), corners, brush, (s, t, along) => {
      lightMix(brush, timber, wood, 0.2, 0, 0, 0.55)
      scale(brush, 0.9 + 0.25 * fbm2(s / 0.5, t / 0.5, 4, seed + 91, along / 0.5))
    })
  }

  const paintRoof = (band: Band, brush: Brush) => {
    const high = slopeM + 0.374
    const long = lengthM + 2 * overhang
    paintPlane(
      band,
      camera,
      roof,
      [
        [0, 0],
        [long, 0],
        [long, high],
        [0, high],
      ],
      brush,
      (s, t, along, rises) => {
        sheetAt(s, t, along, rises, seed, sheet)
        lightMix(brush, metal, rust, sheet.rust, 0, 0, 1.35)
        scale(brush, sheet.lightness)
      },
    )
  }

  return {
    z: near[2],
    paint(band) {
      const brush = createBrush()
      paintSide(band, brush)
      paintRoof(band, brush)
      paintFront(band, brush)
    },
  }
}
