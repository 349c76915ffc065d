// Ferns: a rosette of arching fronds, twice divided. Leaflets are drawn one by one while they are wider than about a pixel;
// smaller ones merge into their pinna. Gaps between leaflets matter: without them fronds read as shells.
import type { Camera } from './camera.ts'
import type { Band } from './canvas.ts'
import type { Brush } from './brush.ts'
import { createBrush } from './brush.ts'
import { hashUnit } from './hash.ts'
import { drawLeaf, drawLimb } from './shapes.ts'
import type { Solid } from './strokes.ts'

export interface Fern {
  readonly x: number
  readonly z: number
  /** Length of a typical frond in metres. */
  readonly sizeM: number
  readonly seed: number
}

/**
 * Sets the brush for a part of a fern at (x, y, z) metres. `nx, ny, nz` is the unit normal of the upper side, `depth` 0…1
 * from the outside of the plant to its heart, `tint` −1…1.
 */
export type FernDye = (
  x: number,
  y: number,
  z: number,
  nx: number,
  ny: number,
  nz: number,
  depth: number,
  tint: number,
  stem: boolean,
  brush: Brush,
) => void

interface Node {
  readonly x: number
  readonly y: number
  readonly z: number
  readonly slope: number
}

interface Frond {
  readonly nodes: readonly Node[]
  readonly heading: number
  readonly lengthM: number
  readonly tint: number
  readonly z: number
  readonly seed: number
}

const pairs = 24

function growFronds(fern: Fern): Frond[] {
  const count = 8 + Math.floor(hashUnit(fern.seed, 1) * 6)
  const fronds: Frond[] = []
  for (let i = 0; i < count; i++) {
    const heading = i * 2.39996 + hashUnit(fern.seed, i, 2) * 0.8
    const lengthM = fern.sizeM * (0.65 + 0.5 * hashUnit(fern.seed, i, 3))
    const upright = 1.35 - 0.35 * hashUnit(fern.seed, i, 4)
    const bend = 1.25 + 0.7 * hashUnit(fern.seed, i, 5)
    const nodes: Node[] = []
    let x = fern.x
    let y = 0.03
    let z = fern.z
    for (let n = 0; n <= pairs; n++) {
      const s = n / pairs
      const turn = heading + 0.25 * (hashUnit(fern.seed, i, 6) - 0.5) * s
      const angle = upright - bend * (s * 0.55 + s * s * 0.75)
      nodes.push({ x, y, z, slope: angle })
      x += (Math.sin(turn) * Math.cos(angle) * lengthM) / pairs
      y += (Math.sin(angle) * lengthM) / pairs
      z += (Math.cos(turn) * Math.cos(angle) * lengthM) / pairs
    }
    fronds.push({
      nodes,
      heading,
      lengthM,
      tint: hashUnit(fern.seed, i, 7) * 2 - 1,
      z: nodes[16].z,
      seed: fern.seed * 31 + i,
    })
  }
  return fronds.toSorted((a, b) => b.z - a.z)
}

/** A fern as a solid in the order of depth. */
export function createFern(camera: Camera, fern: Fern, dye: FernDye): Solid {
  const top = camera.horizonY - (camera.focalPx * (fern.sizeM * 1.15 - camera.eyeM)) / (fern.z + fern.sizeM)
  const bottom = camera.horizonY + (camera.focalPx * (camera.eyeM + 0.15)) / Math.max(0.4, fern.z - fern.sizeM)
  return {
    z: fern.z,
    paint(band) {
      if (bottom < band.y0 || top > band.y1) return
      const brush = createBrush()
      for (const frond of growFronds(fern)) paintFrond(band, camera, frond, fern.sizeM, dye, brush)
    },
  }
}

function paintFrond(band: Band, camera: Camera, frond: Frond, sizeM: number, dye: FernDye, brush: Brush): void {
  const { nodes, heading, lengthM } = frond
  const f = camera.focalPx
  const col = (x: number, z: number) => camera.centreX + (f * x) / z
  const row = (y: number, z: number) => camera.horizonY - (f * (y - camera.eyeM)) / z
  if (nodes.some((n) => n.z < 0.5)) return
  for (let n = 0; n < pairs; n++) {
    const a = nodes[n]
    const b = nodes[n + 1]
    const s = (n + 1) / pairs
    const nx = -Math.sin(heading) * Math.sin(b.slope)
    const ny = Math.cos(b.slope)
    const nz = -Math.cos(heading) * Math.sin(b.slope)
    const depth = Math.max(0, 1 - b.y / (0.55 * sizeM))
    const stemPx = (f * 0.0035 * (1.15 - s) * (lengthM / 0.7)) / a.z
    const y0 = row(a.y, a.z)
    const y1 = row(b.y, b.z)
    const reach = (0.25 * lengthM * f) / b.z + 4
    if (Math.max(y0, y1) + reach < band.y0 || Math.min(y0, y1) - reach > band.y1) continue
    dye(b.x, b.y, b.z, nx, ny, nz, depth, frond.tint, true, brush)
    drawLimb(band, col(a.x, a.z), y0, stemPx * 1.05, col(b.x, b.z), y1, stemPx, 0.2, brush)
    if (s < 0.14) continue
    const shape = Math.min(1, (s - 0.1) / 0.2) * Math.min(1, (1.03 - s) / 0.62)
    const pinna = 0.235 * lengthM * shape
    for (let side = -1; side <= 1; side += 2) {
      const lean = 0.32 + 0.2 * hashUnit(frond.seed, n, side, 1)
      const out = heading + side * (Math.PI / 2 - lean)
      const cosUp = Math.cos(b.slope)
      const dx = Math.sin(out) * (Math.abs(Math.sin(lean)) * cosUp + Math.cos(lean))
      const dz = Math.cos(out) * (Math.abs(Math.sin(lean)) * cosUp + Math.cos(lean))
      const dy = Math.sin(lean) * Math.sin(b.slope) - 0.12 - 0.25 * hashUnit(frond.seed, n, side, 2)
      const long = pinna * (0.88 + 0.2 * hashUnit(frond.seed, n, side, 3))
      const tilt = 0.35 * side
      dye(
        b.x + dx * long * 0.5,
        b.y + dy * long * 0.5,
        b.z + dz * long * 0.5,
        nx + tilt * Math.cos(heading),
        ny,
        nz - tilt * Math.sin(heading),
        depth,
        frond.tint * 0.7 + 0.6 * (hashUnit(frond.seed, n, side, 4) - 0.5),
        false,
        brush,
      )
      const tipZ = b.z + dz * long
      if (tipZ < 0.4) continue
      paintPinna(
        band,
        col(b.x, b.z),
        y1,
        col(b.x + dx * long, tipZ),
        row(b.y + dy * long, tipZ),
        (f * lengthM) / pairs / b.z,
        brush,
      )
    }
  }
}

/** A pinna from (x0, y0) to (x1, y1) px; neighbouring pinnae stand `spacingPx` apart. */
function paintPinna(band: Band, x0: number, y0: number, x1: number, y1: number, spacingPx: number, brush: Brush): void {
  const dx = x1 - x0
  const dy = y1 - y0
  const seen = Math.hypot(dx, dy) + 1e-6
  const widest = 0.5 * spacingPx
  const leaflets = Math.max(4, Math.min(13, Math.round(seen / widest / 0.62)))
  if (widest < 2 || seen < 6) {
    drawLeaf(band, x0, y0, dx, dy, widest * 0.62, 0.9, brush)
    return
  }
  const ux = dx / seen
  const uy = dy / seen
  const { r, g, b } = brush
  for (let i = 0; i < leaflets; i++) {
    const t = (i + 0.35) / leaflets
    const w = widest * Math.min(1, 1.35 - 1.2 * t)
    const bx = x0 + dx * t
    const by = y0 + dy * t
    const half = Math.min((0.36 * seen) / leaflets, w * 0.34)
    const forward = 0.38 * w
    const tone = (0.62 + 0.5 * Math.min(1, t * 2)) * (0.94 + 0.12 * (i & 1))
    for (let side = -1; side <= 1; side += 2) {
      const k = tone * (1 + 0.13 * side)
      brush.r = r * k
      brush.g = g * k
      brush.b = b * k
      drawLeaf(band, bx, by, side * -uy * w + ux * forward, side * ux * w + uy * forward, half, 1, brush)
    }
  }
  brush.r = r * 0.8
  brush.g = g * 0.8
  brush.b = b * 0.8
  drawLimb(band, x0, y0, Math.max(0.3, widest * 0.05), x1, y1, 0.2, 0, brush)
}
