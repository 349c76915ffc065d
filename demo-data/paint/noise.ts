// Smooth noise over world coordinates, about −1…1, mean 0. Every octave fades out once a pixel is wider than its detail:
// that is what replaces supersampling, and it keeps texture down to the pixel at any frame size.
import { hash } from './hash.ts'

const gradients = 256
const perm = new Uint8Array(gradients * 2)
const gradX = new Float64Array(gradients)
const gradY = new Float64Array(gradients)
for (let i = 0; i < gradients; i++) perm[i] = i
for (let i = gradients - 1; i > 0; i--) {
  const j = hash(0x5eed, i) % (i + 1)
  const swap = perm[i]
  perm[i] = perm[j]
  perm[j] = swap
}
for (let i = 0; i < gradients; i++) {
  perm[i + gradients] = perm[i]
  const angle = (i / gradients) * 2 * Math.PI
  gradX[i] = Math.cos(angle) * 1.45
  gradY[i] = Math.sin(angle) * 1.45
}

/** Gradient noise, one feature per unit of x and y. `seed` any integer. Result about −1…1. */
export function noise2(x: number, y: number, seed = 0): number {
  const fx = Math.floor(x)
  const fy = Math.floor(y)
  const u = x - fx
  const v = y - fy
  const ix = fx + seed * 57
  const iy = fy + seed * 131
  const a = perm[ix & 255]
  const b = perm[(ix + 1) & 255]
  const g00 = perm[a + (iy & 255)]
  const g10 = perm[b + (iy & 255)]
  const g01 = perm[a + ((iy + 1) & 255)]
  const g11 = perm[b + ((iy + 1) & 255)]
  const su = u * u * u * (u * (u * 6 - 15) + 10)
  const sv = v * v * v * (v * (v * 6 - 15) + 10)
  const n00 = gradX[g00] * u + gradY[g00] * v
  const n10 = gradX[g10] * (u - 1) + gradY[g10] * v
  const n01 = gradX[g01] * u + gradY[g01] * (v - 1)
  const n11 = gradX[g11] * (u - 1) + gradY[g11] * (v - 1)
  const top = n00 + (n10 - n00) * su
  return top + (n01 + (n11 - n01) * su - top) * sv
}

/**
 * Sum of `octaves` octaves of `noise2` (amplitudes 1, ½, ¼ …, frequencies ×2.03, axes turned 37° each), about −1.3…1.3.
 * `footprint` is the width of a pixel in units of x: octaves finer than that fade out and are not computed.
 */
export function fbm2(x: number, y: number, octaves: number, seed = 0, footprint = 0): number {
  let sum = 0
  let amplitude = 1
  let px = x
  let py = y
  let fp = footprint
  for (let o = 0; o < octaves; o++) {
    if (fp > 0.9) break
    const fade = fp > 0.25 ? (0.9 - fp) / 0.65 : 1
    sum += amplitude * fade * noise2(px, py, seed + o)
    const turned = (px * 0.7986 - py * 0.6018) * 2.03
    py = (px * 0.6018 + py * 0.7986) * 2.03
    px = turned
    amplitude *= 0.5
    fp *= 2.03
  }
  return sum
}

/** Distances to the nearest and second nearest feature point of a jittered grid with cell 1, and that cell's hash. */
export interface Cells {
  f1: number
  f2: number
  id: number
}

/** Worley cells; writes into `out` and returns it. */
export function cells2(x: number, y: number, seed: number, out: Cells): Cells {
  const cx = Math.floor(x)
  const cy = Math.floor(y)
  let f1 = 9
  let f2 = 9
  let id = 0
  for (let j = -1; j <= 1; j++) {
    for (let i = -1; i <= 1; i++) {
      const h = hash(cx + i, cy + j, seed)
      const dx = cx + i + (h & 0xffff) / 65536 - x
      const dy = cy + j + (h >>> 16) / 65536 - y
      const d = dx * dx + dy * dy
      if (d < f1) {
        f2 = f1
        f1 = d
        id = h
      } else if (d < f2) f2 = d
    }
  }
  out.f1 = Math.sqrt(f1)
  out.f2 = Math.sqrt(f2)
  out.id = id
  return out
}
