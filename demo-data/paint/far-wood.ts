// A distant wood or hedge: crowns standing in rows behind each other along a line, each made of puffs that catch the light on
// one side and are dark below and between. Laid out in metres once, painted far to near; the number of crowns never depends
// on the frame size.
import { createStream, hash } from './hash.ts'
import { type Air, throughAir } from './air.ts'
import { createBrush, lightMix } from './brush.ts'
import { type Camera, columnOf, rowOf } from './camera.ts'
import type { Material } from '../light/triplets.ts'
import { type Band, coverIndex } from './canvas.ts'
import { fbm2 } from './noise.ts'
import type { Solid } from './strokes.ts'

export interface FarWoodOptions {
  readonly seed: number
  /** Nearest and farthest row in m. */
  readonly nearM: number
  readonly farM: number
  readonly rows: number
  /** Crown height in m: least and most. */
  readonly heightM: readonly [number, number]
  /** Crowns per metre of width in every row; 0.3 is closed. */
  readonly crownsPerM: number
  /** Share of conifers 0…1. */
  readonly conifers: number
  /** Side the light comes from, −1 left … 1 right, and how much of it is direct sun 0…1. */
  readonly sunSide: number
  readonly sun: number
  /** Weights of sky and overcast light. */
  readonly sky: number
  readonly overcast: number
  readonly leaf: Material
  readonly conifer: Material
  readonly dark: Material
  readonly air: Air
  /** Height of the ground there, m. */
  groundM(x: number, z: number): number
  /** Share of places with a crown 0…1 at X, Z: gaps, thickets. */
  cover(x: number, z: number): number
}

interface Puff {
  readonly x: number
  readonly y: number
  readonly r: number
  readonly grain: number
  readonly seed: number
  readonly lit: readonly [number, number, number]
  readonly shade: readonly [number, number, number]
  readonly material: number
  readonly sun: number
}

/** Plants the wood: solids far to near, one per row of trees. */
export function plantFarWood(camera: Camera, options: FarWoodOptions): Solid[] {
  const solids: Solid[] = []
  for (let row = 0; row < options.rows; row++) {
    const back = options.rows === 1 ? 0 : 1 - row / (options.rows - 1)
    const z = options.nearM * (options.farM / options.nearM) ** back
    const puffs: Puff[] = []
    const halfM = (camera.centreX / camera.focalPx) * z * 1.05 + options.heightM[1]
    const crowns = Math.ceil(2 * halfM * options.crownsPerM)
    for (let i = 0; i < crowns; i++) {
      const next = createStream(hash(options.seed, row, i))
      const x = ((i + next()) / crowns - 0.5) * 2 * halfM
      if (next() > options.cover(x, z)) continue
      plantCrown(puffs, camera, options, x, z * (1 + (0.03 * (next() - 0.5)) / options.rows), next)
    }
    puffs.sort((a, b) => a.y - a.r - (b.y - b.r))
    solids.push({ z, paint: (band) => paintPuffs(band, puffs) })
  }
  return solids
}

function plantCrown(
  puffs: Puff[],
  camera: Camera,
  options: FarWoodOptions,
  x: number,
  z: number,
  next: () => number,
): void {
  const conifer = next() < options.conifers
  const [least, most] = options.heightM
  const height = (least + (most - least) * next() ** 1.6) * (conifer ? 1.15 : 1)
  const ground = options.groundM(x, z)
  const material = conifer ? options.conifer : options.leaf
  const own = 0.8 + 0.4 * next()
  const brush = createBrush()
  const px = camera.focalPx / z
  const width = conifer ? 0.16 : 0.3 + 0.22 * next()
  const count = conifer ? 16 : 24 + Math.floor(14 * next())
  for (let k = 0; k < count; k++) {
    const t = k / (count - 1)
    const up = conifer ? 0.1 + 0.88 * (1 - t) : 0.16 + 0.78 * (1 - t) + 0.1 * (next() - 0.5)
    const outline = conifer ? 1.05 - up : Math.sqrt(Math.max(0.05, 1 - ((up - 0.52) / 0.5) ** 2))
    const side = (2 * next() - 1) * outline * width
    const r = height * (conifer ? 0.04 + 0.08 * (1 - up) : 0.06 + 0.07 * next())
    const facing = 0.5 + 0.5 * options.sunSide * (side / width)
    const lift = 0.35 + 0.65 * up
    const sun = options.sun * own * lift * (0.35 + 0.65 * facing)
    const open = own * (0.25 + 0.75 * up)
    lightMix(brush, material, options.dark, 0.06, sun, options.sky * open, options.overcast * open, 0.12 * own)
    throughAir(brush, options.air, z)
    const lit = [brush.r, brush.g, brush.b] as const
    const share = brush.sun
    const id = brush.material
    lightMix(
      brush,
      material,
      options.dark,
      0.4,
      sun * 0.1,
      options.sky * open * 0.35,
      options.overcast * open * 0.35,
      0.06,
    )
    throughAir(brush, options.air, z)
    puffs.push({
      x: columnOf(camera, x + side * height, z),
      y: rowOf(camera, ground + up * height, z),
      r: r * px,
      grain: px,
      seed: Math.floor(next() * 997),
      lit,
      shade: [brush.r, brush.g, brush.b],
      material: id,
      sun: share,
    })
  }
  lightMix(brush, material, options.dark, 0.35, 0.12 * options.sun, options.sky * 0.42, options.overcast * 0.36, 0.1)
  throughAir(brush, options.air, z)
  const dark = [brush.r, brush.g, brush.b] as const
  const foot = { grain: px, lit: dark, shade: dark, material: options.dark.id, sun: 0 }
  for (let k = -2; k <= 2; k++) {
    const r = height * (0.06 + 0.07 * next())
    const y = rowOf(camera, ground + r * 0.7, z)
    puffs.push({ ...foot, x: columnOf(camera, x + k * width * height * 0.45, z), y, r: r * px, seed: k + 5 })
  }
}

/** A ragged ball: the edge breaks into leaves, the side away from the light falls into shade. */
function paintPuffs(band: Band, puffs: readonly Puff[]): void {
  const brush = createBrush()
  for (const puff of puffs) {
    const reach = puff.r * 1.35 + 1
    const top = Math.max(band.y0, Math.floor(puff.y - reach))
    const bottom = Math.min(band.y1 - 1, Math.ceil(puff.y + reach))
    if (top > bottom) continue
    const left = Math.max(0, Math.floor(puff.x - reach))
    const right = Math.min(band.width - 1, Math.ceil(puff.x + reach))
    const detail = 2.6 / puff.grain
    for (let y = top; y <= bottom; y++) {
      const dy = (y + 0.5 - puff.y) / puff.r
      for (let x = left; x <= right; x++) {
        const dx = (x + 0.5 - puff.x) / puff.r
        const d = Math.sqrt(dx * dx + dy * dy)
        if (d > 1.35) continue
        const leaves = fbm2((x - puff.x) * detail, (y - puff.y) * detail, 3, puff.seed, detail)
        const edge = (1 + 0.42 * leaves - d) * puff.r * 0.9 + 0.5
        if (edge <= 0) continue
        const shade = Math.min(1, Math.max(0, 0.6 - 0.3 * dy + 0.62 * leaves))
        brush.r = puff.shade[0] + (puff.lit[0] - puff.shade[0]) * shade
        brush.g = puff.shade[1] + (puff.lit[1] - puff.shade[1]) * shade
        brush.b = puff.shade[2] + (puff.lit[2] - puff.shade[2]) * shade
        brush.material = puff.material
        brush.sun = puff.sun * shade
        coverIndex(band, (y - band.y0) * band.width + x, edge > 1 ? 1 : edge, brush)
      }
    }
  }
}
