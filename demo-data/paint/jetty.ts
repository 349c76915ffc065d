// A wooden jetty: planks laid across, each a little longer, darker or more tilted than its neighbour, edge beams, and round
// posts that throw shadows on the planks. The same call paints what water mirrors, when the camera lies below.
// Ground truth: `timber`.
import type { Palette } from '../light/triplets.ts'
import { createBrush, light, scale } from './brush.ts'
import type { Camera } from './camera.ts'
import type { Band } from './canvas.ts'
import { hashUnit } from './hash.ts'
import { fbm2, noise2 } from './noise.ts'
import { paintPlane, type Plane } from './plane.ts'
import { createPlanks } from './planks.ts'
import type { Solid } from './strokes.ts'
import { createSurface, lightSurface } from './surface.ts'
import { createTurned } from './turned.ts'
import { along, unitVector, type Vector } from './vector.ts'

/** A straight stretch of deck: it starts at (x, z) and runs `lengthM` along (dx, dz). */
export interface Deck {
  readonly x: number
  readonly z: number
  readonly dx: number
  readonly dz: number
  readonly widthM: number
  readonly lengthM: number
  /** Distances from the start at which pairs of posts stand; the second number is how far they rise above the deck. */
  readonly posts: readonly (readonly [number, number])[]
}

const deckM = 0.56
const plankM = 0.148
const gapM = 0.009
const beamM = 0.15
const postM = 0.078

export interface Jetty {
  /** Paints all decks in the order given: far ones first. */
  paint(band: Band): void
}

export function createJetty(
  palette: Palette,
  camera: Camera,
  decks: readonly Deck[],
  sun: Vector,
  seed: number,
): Jetty {
  const brush = createBrush()
  const timber = palette.of('timber')
  const bark = palette.of('gravel')
  const surface = createSurface(timber)
  const planks = createPlanks(timber, bark, seed, 9, 0)
  const parts = decks.map((deck, d) => {
    const forward = unitVector([deck.dx, 0, deck.dz])
    const right: Vector = [forward[2], 0, -forward[0]]
    const start: Vector = [deck.x, 0, deck.z]
    const half = deck.widthM / 2
    const posts = deck.posts.flatMap(([at, rise], i) =>
      [-1, 1].map((side) => ({
        side,
        place: along(along(start, forward, at), right, side * (half + postM)),
        top: deckM + rise * (0.92 + 0.16 * hashUnit(seed, d, i, side + 5)),
        key: hashUnit(seed, d, i, side + 9),
      })),
    )
    const postShade = (x: number, z: number): number => {
      let left = 1
      for (const post of posts) {
        const px = x - post.place[0]
        const pz = z - post.place[2]
        const flat = Math.hypot(sun[0], sun[2])
        const away = (-px * sun[0] - pz * sun[2]) / flat
        const reach = ((post.top - deckM) / sun[1]) * flat
        if (away < 0 || away > reach + 0.02) continue
        const off = Math.abs(px * sun[2] - pz * sun[0]) / flat
        const soft = 0.004 + 0.0046 * away
        const inside = Math.min(1, Math.max(0, (postM * 0.95 - off) / (2 * soft) + 0.5))
        left *= 1 - inside * Math.min(1, Math.max(0, (reach - away) / 0.02 + 0.5))
      }
      return left
    }
    const count = Math.floor(deck.lengthM / plankM)
    const boards = Array.from({ length: count }, (_, i) => {
      const chance = (k: number) => hashUnit(seed, d, i, k)
      const middle = along(start, forward, (i + 0.5) * plankM)
      const lift = deckM + 0.006 * (chance(1) - 0.5)
      const roll = 0.05 * (chance(2) - 0.5)
      const plane: Plane = {
        origin: [middle[0], lift, middle[2]],
        u: unitVector([right[0] + forward[0] * 0.012 * (chance(3) - 0.5), 0.006 * (chance(4) - 0.5), right[2]]),
        v: unitVector([forward[0], roll, forward[2]]),
      }
      return {
        plane,
        left: -half - 0.035 * chance(5),
        right: half + 0.035 * chance(6),
        near: -plankM / 2 + gapM * (0.3 + 0.6 * chance(7)),
        facing: sun[1] - roll * (sun[0] * forward[0] + sun[2] * forward[2]),
        tone: 0.78 + 0.42 * chance(8),
        i,
      }
    })
    const paintBoard = (band: Band, board: (typeof boards)[number]) => {
      const { plane, near } = board
      if (plane.origin[2] < 0.9) return
      const corners = [
        [board.left, near],
        [board.right, near],
        [board.right, -near],
        [board.left, -near],
      ] as const
      paintPlane(band, camera, plane, corners, brush, (s, t, acrossM, alongM) => {
        const fp = Math.sqrt(acrossM * alongM)
        planks(t + 4 + 9 * board.i, s, fp, surface)
        const edge = Math.min(s - board.left, board.right - s, t - near, -near - t)
        const worn = fbm2(s / 0.5 + 5 * board.i, t / 0.2, 3, seed + 5, acrossM / 0.5)
        const nail = Math.min(...[-half + 0.1, half - 0.1].map((at) => Math.hypot(s - at, Math.abs(t) - 0.04)))
        surface.tone *= board.tone * (1 + 0.16 * worn) * (edge < 0.006 ? 0.75 : 1)
        if (nail < 0.0055 && acrossM < 0.006) surface.tone *= 0.35
        const x = plane.origin[0] + s * plane.u[0] + t * plane.v[0]
        const z = plane.origin[2] + s * plane.u[2] + t * plane.v[2]
        lightSurface(brush, surface, board.facing * postShade(x, z), 0.92, 0.03)
      })
    }
    const side: Plane = { origin: along(start, right, -half), u: forward, v: [0, 1, 0] }
    const front: Plane = { origin: along(start, right, -half), u: right, v: [0, 1, 0] }
    const paintUnderside = (band: Band) => {
      const near = Math.max(0, 1 - deck.z)
      const plane: Plane = { origin: along(start, [0, 1, 0], deckM - 0.04), u: right, v: forward }
      const corners = [
        [-half, near],
        [half, near],
        [half, deck.lengthM],
        [-half, deck.lengthM],
      ] as const
      paintPlane(band, camera, plane, corners, brush, () => light(brush, timber, 0.02, 0.1))
    }
    const paintBeam = (band: Band, plane: Plane, facing: number, lengthM: number) => {
      const corners = [
        [0, deckM - beamM],
        [lengthM, deckM - beamM],
        [lengthM, deckM - 0.02],
        [0, deckM - 0.02],
      ] as const
      paintPlane(band, camera, plane, corners, brush, (s, t, acrossM) => {
        const grain = fbm2(s / 0.4, t / 0.012, 4, seed + 8, acrossM / 0.1)
        light(brush, timber, Math.max(0, facing) * Math.min(1, Math.max(0.15, (deckM - 0.045 - t) * 30)), 0.4)
        scale(brush, 0.8 + 0.2 * grain)
      })
    }
    const solids = posts
      .filter((post) => post.place[2] > 1)
      .map((post) => ({
        side: post.side,
        solid: createPost(camera, post.place, post.top, post.key, timber, sun, seed),
      }))
      .sort((a, b) => b.solid.z - a.solid.z)
    return (band: Band) => {
      for (const { side: at, solid } of solids) if (at > 0) solid.paint(band)
      if (camera.eyeM < 0) paintUnderside(band)
      else for (let i = boards.length - 1; i >= 0; i--) paintBoard(band, boards[i])
      paintBeam(band, side, -(sun[0] * right[0] + sun[2] * right[2]), deck.lengthM)
      if (deck.z > 1) paintBeam(band, front, -(sun[0] * forward[0] + sun[2] * forward[2]), deck.widthM)
      for (const { side: at, solid } of solids) if (at < 0) solid.paint(band)
    }
  })
  return { paint: (band) => parts.forEach((part) => part(band)) }
}

function createPost(
  camera: Camera,
  place: Vector,
  top: number,
  key: number,
  timber: ReturnType<Palette['of']>,
  sun: Vector,
  seed: number,
): Solid {
  const r = postM * (0.9 + 0.25 * key)
  const profile = [
    [r * 1.04, 0],
    [r, top - 0.02],
    [r * 0.8, top],
  ] as const
  return createTurned(camera, { x: place[0], z: place[2], profile }, (hit, fp, brush) => {
    const wet = Math.max(0, 1 - hit.y / (0.1 + 0.03 * noise2(hit.around * 2, key * 9, seed)))
    const rings = hit.ny > 0.7 ? noise2(Math.hypot(hit.x - place[0], hit.z - place[2]) / 0.008, key, seed + 2) : 0
    const grain = fbm2((hit.around * r) / 0.012 + 40 * key, hit.y / 0.35, 4, seed + 1, fp / 0.012)
    const crack = Math.abs(noise2((hit.around * r) / 0.05 + 9 * key, hit.y / 0.9, seed + 3)) < 0.035 ? 0.55 : 1
    const facing = Math.max(0, hit.nx * sun[0] + hit.ny * sun[1] + hit.nz * sun[2])
    light(brush, timber, facing, 0.45 + 0.45 * Math.max(0, hit.ny))
    scale(brush, (0.85 + 0.25 * key) * (1 + 0.25 * grain + 0.15 * rings) * crack * (1 - 0.55 * wet))
  })
}
