// Rocks standing on a shore, as height over ground points: broken domes with joints, ledges along tilted beds and rough tops.
// Sizes in metres. A rock's features scale with the rock, so boulders and sea stacks share one recipe. Tuned by eye.
import { type Cells, cells2, fbm2, noise2 } from './noise.ts'

export interface Rock {
  readonly x: number
  readonly z: number
  readonly radiusX: number
  readonly radiusZ: number
  readonly heightM: number
  readonly turnDeg: number
  readonly seed: number
  /** 0 = rounded boulder, 1 = steep stack. */
  readonly steep: number
}

export interface RockField {
  /** Height of the tallest rock at X, Z, or −Infinity where there is none. */
  height(x: number, z: number, footprintM: number): number
}

const binM = 4
const overhang = 1.25
const cells: Cells = { f1: 0, f2: 0, id: 0 }

function rockHeight(rock: Rock, x: number, z: number, footprintM: number): number {
  const { radiusX, radiusZ, heightM, seed, steep } = rock
  const size = Math.min(radiusX, radiusZ)
  const a = (rock.turnDeg * Math.PI) / 180
  const dx = x - rock.x
  const dz = z - rock.z
  const wx = 0.2 * size * noise2(x / (0.9 * size), z / (0.9 * size), seed)
  const wz = 0.2 * size * noise2(x / (0.9 * size) + 7, z / (0.9 * size), seed)
  const u = ((dx + wx) * Math.cos(a) + (dz + wz) * Math.sin(a)) / radiusX
  const v = ((dz + wz) * Math.cos(a) - (dx + wx) * Math.sin(a)) / radiusZ
  const q2 = u * u + v * v
  if (q2 > overhang) return -Infinity
  const joint = (0.62 - 0.22 * steep) * size
  cells2(x / joint + 0.25 * noise2(x / joint, z / joint, seed + 1), z / joint, seed + 2, cells)
  const block = ((cells.id & 255) / 255 - 0.5) * (0.42 - 0.12 * steep)
  const crack = Math.min(1, (cells.f2 - cells.f1) * 7)
  const q = Math.sqrt(q2) + 0.1 * block
  const dome = q < 1 ? (1 - q ** (2 + 5 * steep)) ** (0.6 - 0.2 * steep) : -(q - 1) * 2
  const rough = 1 - Math.abs(fbm2(x / (0.45 * size), z / (0.45 * size), 6, seed + 5, footprintM / (0.45 * size)))
  let h = heightM * (dome * (0.72 + block) + 0.24 * (rough - 0.6) * Math.min(1, Math.max(0, dome) * 3))
  h -= 0.05 * heightM * (1 - crack) * Math.max(0, dome)
  const bed = (0.16 + 0.05 * steep) * heightM
  const tilt = 0.16 * dx + 0.1 * dz + 0.25 * bed * noise2(x / size, z / size, seed + 9)
  const level = (h + tilt) / bed
  const step = Math.floor(level)
  const f = level - step
  const ledge = (step + f * f * f * (f * (f * 6 - 15) + 10)) * bed - tilt
  return h + (ledge - h) * 0.55
}

/** Sorts the rocks into bins, so that a look-up meets only those nearby. */
export function createRockField(rocks: readonly Rock[]): RockField {
  const bins = new Map<number, Rock[]>()
  const key = (i: number, j: number) => i * 4096 + j
  for (const rock of rocks) {
    const reach = Math.max(rock.radiusX, rock.radiusZ) * 1.5
    for (let i = Math.floor((rock.x - reach) / binM); i <= Math.floor((rock.x + reach) / binM); i++) {
      for (let j = Math.floor((rock.z - reach) / binM); j <= Math.floor((rock.z + reach) / binM); j++) {
        const list = bins.get(key(i, j))
        if (list) list.push(rock)
        else bins.set(key(i, j), [rock])
      }
    }
  }
  return {
    height(x, z, footprintM) {
      const list = bins.get(key(Math.floor(x / binM), Math.floor(z / binM)))
      if (!list) return -Infinity
      let top = -Infinity
      for (const rock of list) top = Math.max(top, rockHeight(rock, x, z, footprintM))
      return top
    },
  }
}
