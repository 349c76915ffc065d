// What stands and floats near the camera: the jetty that leads out, reeds on the left and along the bank, water lilies.
import type { Palette } from '../light/triplets.ts'
import type { Camera } from '../paint/camera.ts'
import type { Band } from '../paint/canvas.ts'
import { createJetty, type Deck } from '../paint/jetty.ts'
import { layPads, type PadGroup, paintPads } from '../paint/lily-pads.ts'
import { noise2 } from '../paint/noise.ts'
import { growReeds, paintReeds, type ReedBed } from '../paint/reeds.ts'
import type { Vector } from '../paint/vector.ts'

const decks: readonly Deck[] = [
  {
    x: -0.2,
    z: 17.2,
    dx: 0,
    dz: 1,
    widthM: 4.2,
    lengthM: 2.4,
    posts: [
      [0.1, 0.5],
      [2.3, 0.5],
    ],
  },
  {
    x: 2.15,
    z: 0.4,
    dx: -2.1,
    dz: 16.8,
    widthM: 1.5,
    lengthM: 16.9,
    posts: [
      [2.9, 0.42],
      [5.6, 0.45],
      [8.4, 0.4],
      [11.2, 0.44],
      [14.2, 0.42],
    ],
  },
]

const padGroups: readonly PadGroup[] = [
  { x: -0.35, z: 4.1, radiusM: 0.45, count: 16 },
  { x: -0.1, z: 6.2, radiusM: 0.8, count: 60 },
  { x: -0.7, z: 8.2, radiusM: 1.2, count: 110 },
  { x: 4.6, z: 8.6, radiusM: 1.5, count: 160 },
  { x: 6.6, z: 11.5, radiusM: 2.4, count: 300 },
]

const share = (v: number) => Math.min(1, Math.max(0, v))

function reedBeds(seed: number): readonly ReedBed[] {
  const alongBank: ReedBed = {
    seed: seed + 41,
    perM2: 16,
    heightM: [1.3, 2.1],
    x0: 10,
    x1: 30,
    z0: 26,
    z1: 38,
    cover: (x, z) => share((x - 13 - 3 * noise2(z / 4, 1, 5) - 0.22 * (z - 26)) / 2),
  }
  const nearLeft: ReedBed = {
    seed: seed + 40,
    perM2: 24,
    heightM: [1.65, 2.45],
    x0: -11,
    x1: -0.7,
    z0: 1.7,
    z1: 15,
    cover: (x, z) =>
      share((-0.75 - 0.3 * z - x + 0.7 * noise2(x / 1.6, z / 1.6, 6)) / 0.9) *
      share(0.8 + 0.7 * noise2(x / 0.9, z / 0.9, 8)),
  }
  return [alongBank, nearLeft]
}

export interface LakeForeground {
  /** Paints it above the water. */
  paint(band: Band): void
  /** Paints what of it the water mirrors, for a camera below the water. */
  paintMirrored(band: Band, view: Camera): void
}

export function createLakeForeground(palette: Palette, camera: Camera, sun: Vector, seed: number): LakeForeground {
  const beds = reedBeds(seed).map((bed) => ({ bed, reeds: growReeds(bed) }))
  const pads = layPads(padGroups, seed)
  const jetty = createJetty(palette, camera, decks, sun, seed)
  return {
    paint(band) {
      paintPads(band, camera, palette, pads, sun)
      jetty.paint(band)
      for (const { bed, reeds } of beds) paintReeds(band, camera, palette, reeds, bed, sun)
    },
    paintMirrored(band, view) {
      for (const { bed, reeds } of beds) paintReeds(band, view, palette, reeds, bed, sun)
      createJetty(palette, view, decks, sun, seed).paint(band)
    },
  }
}
