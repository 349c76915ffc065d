// Encoded `displayRgb` 0…1 to codes of 8 or 16 bit with triangular dither of ±1 code, so that smooth skies do not band.
// The noise is an integer hash of the pixel's place in the full frame: tiles meet without a seam and both engines agree.
import type { Region } from './render-on-cpu.ts'

/** Three 32-bit hashes of a pixel: pcg3d of Jarzynski & Olano, "Hash Functions for GPU Rendering", JCGT 9(3), 2020 (from memory). */
function hash(x: number, y: number, into: Uint32Array): void {
  into[0] = Math.imul(x, 1664525) + 1013904223
  into[1] = Math.imul(y, 1664525) + 1013904223
  into[2] = 1013904223
  stir(into)
  for (let i = 0; i < 3; i++) into[i] ^= into[i] >>> 16
  stir(into)
}

function stir(v: Uint32Array): void {
  v[0] += Math.imul(v[1], v[2])
  v[1] += Math.imul(v[2], v[0])
  v[2] += Math.imul(v[0], v[1])
}

/**
 * Codes of `rgb` (interleaved, `region.width × region.height` pixels). Noise per channel is the difference of the hash's two
 * halves, uniform each: triangular in ±1 code. 0 and 1 stay exact, so clipped areas are not speckled.
 */
export function quantise(rgb: Float32Array, region: Region, bits: 8): Uint8Array<ArrayBuffer>
export function quantise(rgb: Float32Array, region: Region, bits: 16): Uint16Array<ArrayBuffer>
export function quantise(rgb: Float32Array, region: Region, bits: 8 | 16): Uint8Array | Uint16Array {
  const { x, y, width, height } = region
  if (rgb.length !== width * height * 3) {
    throw new RangeError(
      `Cannot quantise: ${width} × ${height} pixels need ${width * height * 3} numbers, not ${rgb.length}.`,
    )
  }
  const largest = 2 ** bits - 1
  const codes = bits === 8 ? new Uint8Array(rgb.length) : new Uint16Array(rgb.length)
  const hashes = new Uint32Array(3)
  for (let row = 0, i = 0; row < height; row++) {
    for (let column = 0; column < width; column++) {
      hash(x + column, y + row, hashes)
      for (let channel = 0; channel < 3; channel++, i++) {
        const value = rgb[i]
        const noise = ((hashes[channel] >>> 16) - (hashes[channel] & 0xffff)) / 65536
        const code = Math.floor(value * largest + 0.5 + noise)
        codes[i] = value > 0 && value < 1 ? Math.min(Math.max(code, 0), largest) : value >= 1 ? largest : 0
      }
    }
  }
  return codes
}
