// Smooth random fields on a plane: lattice values between which a cubic blends, in octaves of half size and half height.

function lattice(x: number, y: number, seed: number): number {
  let h = Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(seed, 0x9e3779b1)
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32
}

/** A field of about unit deviation and mean 0, with features `size` long. */
export function valueNoise(x: number, y: number, size: number, seed: number, octaves = 3): number {
  let sum = 0
  let power = 0
  for (let k = 0; k < octaves; k++) {
    const px = (x / size) * 2 ** k
    const py = (y / size) * 2 ** k
    const [i, j] = [Math.floor(px), Math.floor(py)]
    const [fx, fy] = [px - i, py - j]
    const a = fx * fx * (3 - 2 * fx)
    const b = fy * fy * (3 - 2 * fy)
    const s = seed + k
    const top = lattice(i, j, s) * (1 - a) + lattice(i + 1, j, s) * a
    const bottom = lattice(i, j + 1, s) * (1 - a) + lattice(i + 1, j + 1, s) * a
    sum += (top * (1 - b) + bottom * b - 0.5) / 2 ** k
    power += 1 / 4 ** k
  }
  // A blended lattice of uniform numbers has a deviation of about .2.
  return sum / (0.2 * Math.sqrt(power))
}
