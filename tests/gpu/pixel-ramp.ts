// Pixels that show where two engines part: a ramp over [−1, 16] in grey and colour, steps of saturation, and odd numbers.

const levels = [-1, -0.1, -1e-3, 0, 1e-7, 1e-4, 0.002, 0.0031308, 0.01, 0.05, 0.18, 0.4, 0.7, 0.95, 1, 1.3, 2.5, 6, 16]
const peaks = [0, 0.5, 0.92, 0.96, 1, 1.5]
const odd = [Number.NaN, Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY]

/** All combinations of the levels in three channels, with peaks in turn: interleaved RGBA, 16-bit-safe size. */
export function finiteRamp(): { rgba: Float32Array; width: number; height: number } {
  const pixels: number[] = []
  for (const r of levels) {
    for (const g of levels) {
      for (const b of levels) pixels.push(r, g, b, peaks[(pixels.length / 4) % peaks.length])
    }
  }
  const width = levels.length ** 2
  return { rgba: new Float32Array(pixels), width, height: pixels.length / 4 / width }
}

/** Every odd number in every channel beside ordinary ones. */
export function oddRamp(): { rgba: Float32Array; width: number; height: number } {
  const pixels: number[] = []
  for (const value of odd) {
    for (let mask = 1; mask < 8; mask++) {
      pixels.push(mask & 1 ? value : 0.2, mask & 2 ? value : 0.5, mask & 4 ? value : 0.1, peaks[pixels.length % 5])
    }
  }
  return { rgba: new Float32Array(pixels), width: pixels.length / 4, height: 1 }
}
