// Smooth noise in space, about −1…1: for textures that must not stretch on steep faces, such as rock.
import { hash } from './hash.ts'

const perm = new Uint8Array(512)
for (let i = 0; i < 256; i++) perm[i] = i
for (let i = 255; i > 0; i--) {
  const j = hash(0x3d, i) % (i + 1)
  const swap = perm[i]
  perm[i] = perm[j]
  perm[j] = swap
}
for (let i = 0; i < 256; i++) perm[i + 256] = perm[i]

/** Gradients: the twelve edges of a cube (after Perlin 2002, from memory), padded to sixteen. */
const gx = Float64Array.from([1, -1, 1, -1, 1, -1, 1, -1, 0, 0, 0, 0, 1, 0, -1, 0])
const gy = Float64Array.from([1, 1, -1, -1, 0, 0, 0, 0, 1, -1, 1, -1, 1, -1, 1, -1])
const gz = Float64Array.from([0, 0, 0, 0, 1, 1, -1, -1, 1, 1, -1, -1, 0, 1, 0, -1])

function corner(i: number, x: number, y: number, z: number): number {
  const g = perm[i & 255] & 15
  return gx[g] * x + gy[g] * y + gz[g] * z
}

/** Gradient noise, one feature per unit. `seed` any integer. */
export function noise3(x: number, y: number, z: number, seed = 0): number {
  const fx = Math.floor(x)
  const fy = Math.floor(y)
  const fz = Math.floor(z)
  const u = x - fx
  const v = y - fy
  const w = z - fz
  const ix = (fx + seed * 57) & 255
  const iy = (fy + seed * 131) & 255
  const iz = fz & 255
  const su = u * u * u * (u * (u * 6 - 15) + 10)
  const sv = v * v * v * (v * (v * 6 - 15) + 10)
  const sw = w * w * w * (w * (w * 6 - 15) + 10)
  const a = perm[ix] + iy
  const b = perm[(ix + 1) & 255] + iy
  const aa = perm[a & 255] + iz
  const ab = perm[(a + 1) & 255] + iz
  const ba = perm[b & 255] + iz
  const bb = perm[(b + 1) & 255] + iz
  const x00 = corner(aa, u, v, w)
  const x10 = corner(ab, u, v - 1, w)
  const x01 = corner(aa + 1, u, v, w - 1)
  const x11 = corner(ab + 1, u, v - 1, w - 1)
  const y00 = x00 + (corner(ba, u - 1, v, w) - x00) * su
  const y10 = x10 + (corner(bb, u - 1, v - 1, w) - x10) * su
  const y01 = x01 + (corner(ba + 1, u - 1, v, w - 1) - x01) * su
  const y11 = x11 + (corner(bb + 1, u - 1, v - 1, w - 1) - x11) * su
  const near = y00 + (y10 - y00) * sv
  return near + (y01 + (y11 - y01) * sv - near) * sw
}

/** `octaves` octaves of `noise3`, as `fbm2`. */
export function fbm3(x: number, y: number, z: number, octaves: number, seed = 0, footprint = 0): number {
  let sum = 0
  let amplitude = 1
  let scale = 1
  for (let o = 0; o < octaves; o++) {
    const fp = footprint * scale
    if (fp > 0.9) break
    const fade = fp > 0.25 ? (0.9 - fp) / 0.65 : 1
    sum += amplitude * fade * noise3(x * scale, y * scale, z * scale, seed + o)
    amplitude *= 0.5
    scale *= 2.03
  }
  return sum
}
