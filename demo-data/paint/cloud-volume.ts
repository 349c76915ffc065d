// Billowing noise in space: inverted Worley cells at three sizes in one tileable cube, about 0…1 with mean ≈ .55.
// A cube of 64³ bytes is looked up a hundred times faster than the cells can be searched.
import { hash } from './hash.ts'

const side = 64
const octaves = [
  { cells: 4, weight: 0.6 },
  { cells: 8, weight: 0.28 },
  { cells: 16, weight: 0.12 },
]

function addOctave(sum: Float32Array, cells: number, weight: number, seed: number): void {
  const count = cells * cells * cells
  const px = new Float64Array(count)
  const py = new Float64Array(count)
  const pz = new Float64Array(count)
  for (let i = 0; i < count; i++) {
    px[i] = hash(i, cells, seed, 1) / 4294967296
    py[i] = hash(i, cells, seed, 2) / 4294967296
    pz[i] = hash(i, cells, seed, 3) / 4294967296
  }
  const wrap = cells - 1
  for (let z = 0, at = 0; z < side; z++) {
    const gz = (z * cells) / side
    const cz = Math.floor(gz)
    for (let y = 0; y < side; y++) {
      const gy = (y * cells) / side
      const cy = Math.floor(gy)
      for (let x = 0; x < side; x++, at++) {
        const gx = (x * cells) / side
        const cx = Math.floor(gx)
        let nearest = 9
        for (let k = -1; k <= 1; k++) {
          for (let j = -1; j <= 1; j++) {
            const row = (((cz + k) & wrap) * cells + ((cy + j) & wrap)) * cells
            for (let i = -1; i <= 1; i++) {
              const p = row + ((cx + i) & wrap)
              const dx = cx + i + px[p] - gx
              const dy = cy + j + py[p] - gy
              const dz = cz + k + pz[p] - gz
              const d = dx * dx + dy * dy + dz * dz
              if (d < nearest) nearest = d
            }
          }
        }
        sum[at] += weight * (1 - Math.sqrt(nearest))
      }
    }
  }
}

/** The cube of one seed, side 64, x fastest. */
export function createCloudVolume(seed: number): Float32Array {
  const sum = new Float32Array(side * side * side)
  for (const { cells, weight } of octaves) addOctave(sum, cells, weight, seed)
  return sum
}

/** Trilinear lookup; one period of the cube per unit of x, y, z (any finite numbers). */
export function billow(volume: Float32Array, x: number, y: number, z: number): number {
  const gx = x * side
  const gy = y * side
  const gz = z * side
  const fx = Math.floor(gx)
  const fy = Math.floor(gy)
  const fz = Math.floor(gz)
  const u = gx - fx
  const v = gy - fy
  const w = gz - fz
  const x0 = fx & 63
  const x1 = (fx + 1) & 63
  const y0 = (fy & 63) << 6
  const y1 = ((fy + 1) & 63) << 6
  const z0 = (fz & 63) << 12
  const z1 = ((fz + 1) & 63) << 12
  const a = volume[z0 + y0 + x0] + (volume[z0 + y0 + x1] - volume[z0 + y0 + x0]) * u
  const b = volume[z0 + y1 + x0] + (volume[z0 + y1 + x1] - volume[z0 + y1 + x0]) * u
  const c = volume[z1 + y0 + x0] + (volume[z1 + y0 + x1] - volume[z1 + y0 + x0]) * u
  const d = volume[z1 + y1 + x0] + (volume[z1 + y1 + x1] - volume[z1 + y1 + x0]) * u
  const front = a + (b - a) * v
  return front + (c + (d - c) * v - front) * w
}
