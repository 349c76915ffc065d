// The land around the lake: where the shore runs, wooded hills on both sides, clearings, and the mountain behind.
// Heights in metres above the water; negative means lake.
import { type Crown, crownAt } from '../paint/canopy.ts'
import { mountainHeight, type MountainShape } from '../paint/mountain.ts'
import { fbm2, noise2 } from '../paint/noise.ts'
import { createPolarGrid } from '../paint/polar-grid.ts'
import type { WoodedLand } from '../paint/wooded-slope.ts'

const mountain: MountainShape = { seed: 349, x: -700, z: 10200, halfWidthM: 8200, halfDepthM: 4100, heightM: 1950 }

interface Hill {
  readonly x: number
  readonly z: number
  readonly radiusM: number
  readonly heightM: number
}

const hills: readonly Hill[] = [
  { x: 520, z: 860, radiusM: 430, heightM: 92 },
  { x: 1250, z: 1900, radiusM: 900, heightM: 250 },
  { x: -1350, z: 1750, radiusM: 900, heightM: 170 },
  { x: -1500, z: 3300, radiusM: 1500, heightM: 330 },
  { x: 300, z: 3900, radiusM: 1300, heightM: 190 },
  { x: 2300, z: 4300, radiusM: 1700, heightM: 470 },
]

/** Nearest land on the far side, m. */
export const shoreM = 380
export const farM = 14500
/** Up to here trees are drawn one by one; beyond, the wood is part of the land's shape. */
export const sprayedToM = 880

/** Distance of the far shore: headlands from both sides, open water between them. */
function farShore(slope: number): number {
  const bays = 60 * noise2(slope * 9, 3.1, 301) + 26 * noise2(slope * 31, 7.7, 302)
  const right = 470 + 5200 * Math.max(0, 0.27 - slope) ** 1.5
  const left = 640 + 2400 * Math.max(0, slope + 0.5) ** 1.4
  return Math.max(shoreM + 20, Math.min(right, left, 1450) + bays)
}

function plainGround(x: number, z: number, inland: number): number {
  const rise = inland / (inland + 160)
  let lift = 14
  for (const hill of hills) {
    const dx = (x - hill.x) / hill.radiusM
    const dz = (z - hill.z) / hill.radiusM
    const q = dx * dx + dz * dz
    if (q < 4) lift += hill.heightM * (Math.exp(-1.6 * q) - 0.0017)
  }
  const rolling = fbm2(x / 520, z / 520, 5, 305)
  return Math.max(0.2, 1.2 * Math.min(1, inland / 12) + lift * rise * (1 + 0.5 * rolling) + 8 * rolling * rise)
}

/** Whether X, Z lies on land: negative is lake, else metres behind the shore. */
export function inlandM(x: number, z: number): number {
  return z - farShore(x / z)
}

const land = { ground: 0, cover: 1, conifers: 2, stand: 3 } as const

export interface LakeLand extends WoodedLand {
  /** Share of places with a tree 0…1. */
  wood(x: number, z: number): number
}

/** Prepares the land for a camera whose view spans |X/Z| ≤ `reach`. */
export function createLakeLand(reach: number): LakeLand {
  const grid = createPolarGrid(
    { nearM: shoreM, farM: farM, reach: reach * 1.25, columns: 800, rows: 420, channels: 4 },
    (x, z, out) => {
      const inland = inlandM(x, z)
      const y = inland < 0 ? Math.max(-30, inland * 0.2) : plainGround(x, z, inland)
      const mantle = Math.min(1, Math.max(0, (inland - 2) / 9))
      out[land.ground] = y
      out[land.cover] =
        mantle *
        Math.min(0.98, Math.max(0.05, (0.24 - fbm2(x / 300, z / 380, 5, 311)) * 6)) *
        (y > 330 ? Math.max(0, 1 - (y - 330) / 260) : 1)
      out[land.conifers] = Math.min(0.95, Math.max(0.04, 0.25 + 0.9 * noise2(x / 240, z / 300, 315)))
      out[land.stand] = fbm2(x / 150, z / 150, 4, 316)
    },
  )
  const crown: Crown = { heightM: 0, rise: 0, conifer: false, chance: 0 }
  const rock = (x: number, z: number, footprintM: number) => (z > 6000 ? mountainHeight(mountain, x, z, footprintM) : 0)
  return {
    crown,
    height(x, z, footprintM) {
      grid.locate(x, z)
      const y = grid.read(land.ground) + rock(x, z, footprintM)
      crown.heightM = 0
      if (y < 0 || footprintM > 5 || z < sprayedToM) return y
      crownAt(x, z, y > 560 ? 0 : grid.read(land.cover), grid.read(land.conifers), 320, footprintM, crown)
      return y + crown.heightM
    },
    ground(x, z, footprintM) {
      grid.locate(x, z)
      return grid.read(land.ground) + rock(x, z, footprintM)
    },
    wood(x, z) {
      grid.locate(x, z)
      return grid.read(land.cover)
    },
    stand(x, z) {
      grid.locate(x, z)
      return grid.read(land.stand)
    },
    ceiling(x, z) {
      if (z < shoreM) return -30
      grid.locate(x, z)
      return Math.max(1, grid.read(land.ground)) + 26 + 0.008 * z + (z > 6000 ? rock(x, z, 8) : 0)
    },
    bankM: 0.7,
    rockFromM: 620,
    snowFromM: 1250,
    seed: 320,
  }
}
