// Still rain water on the ground: what it mirrors, how a breath of wind and a few drops disturb it. A mirror picture is the
// scene painted from as far below the ground as the eye is above it; here it is only looked up.
import { type Band } from './canvas.ts'
import { hash } from './hash.ts'
import { noise2 } from './noise.ts'

/** Slopes of the water at X, Z in `out`: small waves plus rings where drops fell. `fp` = metres per pixel. */
export function rippleSlopes(x: number, z: number, fp: number, seed: number, out: { x: number; z: number }): void {
  const fade = 1 / (1 + 30 * fp)
  const breeze = 0.5 + 0.5 * noise2(x / 0.9, z / 0.9, seed + 3)
  const a = 0.012 * breeze * fade
  out.x = a * (noise2(x / 0.07, z / 0.11, seed) + 0.6 * noise2(x / 0.03, z / 0.045, seed + 1))
  out.z = a * (noise2(x / 0.07 + 9, z / 0.11, seed) + 0.6 * noise2(x / 0.03 + 9, z / 0.045, seed + 1))
  const cellM = 0.55
  const cx = Math.floor(x / cellM)
  const cz = Math.floor(z / cellM)
  for (let j = -1; j <= 1; j++) {
    for (let i = -1; i <= 1; i++) {
      const h = hash(cx + i, cz + j, seed, 5)
      if ((h & 15) > 4) continue
      const dx = x - (cx + i + ((h >>> 4) & 255) / 255) * cellM
      const dz = z - (cz + j + ((h >>> 12) & 255) / 255) * cellM
      const r = Math.sqrt(dx * dx + dz * dz) + 1e-6
      const age = 0.05 + (0.3 * ((h >>> 20) & 255)) / 255
      const off = (r - age) / 0.045
      if (off > 2.5 || off < -2.5) continue
      const wave = 0.11 * (0.06 / (0.06 + age)) * Math.exp(-off * off) * Math.cos(off * 3.4) * fade
      out.x += (wave * dx) / r
      out.z += (wave * dz) / r
    }
  }
}

/** Share of light that still water mirrors at a grazing angle whose sine is `sine` (Schlick 1994, n = 1.33). */
export function waterReflectance(sine: number): number {
  const k = 1 - Math.min(1, Math.max(0, sine))
  return 0.02 + 0.98 * k ** 5
}

/** Bilinear colour of a whole-frame picture at continuous pixels (x, y), clamped at its edges, into out[0…2]. */
export function lookUp(picture: Band, x: number, y: number, out: Float64Array): void {
  const gx = Math.max(0, Math.min(picture.width - 1.001, x - 0.5))
  const gy = Math.max(0, Math.min(picture.y1 - 1.001, y - 0.5))
  const i = Math.floor(gx)
  const j = Math.floor(gy)
  const u = gx - i
  const v = gy - j
  const p = j * picture.width + i
  const q = p + picture.width
  const planes = [picture.r, picture.g, picture.b]
  for (let c = 0; c < 3; c++) {
    const d = planes[c]
    const top = d[p] + (d[p + 1] - d[p]) * u
    out[c] = top + (d[q] + (d[q + 1] - d[q]) * u - top) * v
  }
}
