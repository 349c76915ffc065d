// Smooth random fields on a plane: lattice values between which a cubic blends, in octaves of half size and half height.

function lattice(x: number, y: number, seed: number): number {
  let h = Math.imul(x, 0x27d4eb2d) ^ Math.imul(y, 0x165667b1) ^ Math.imul(seed, 0x9e3779b1)
  h = Math.imul(h ^ (h >>> 15), 0x85ebca6b)
  h = Math.imul(h ^ (h >>> 13), 0xc2b2ae35)
  return ((h ^ (h >>> 16)) >>> 0) / 2 ** 32
}

/** One octave: the corners of the square that was looked at last are kept, because places come mostly row by row. */
function octave(seed: number): (x: number, y: number) => number {
  let [column, row] = [NaN, NaN]
  let [topLeft, topRight, bottomLeft, bottomRight] = [0, 0, 0, 0]
  return (x, y) => {
    const [i, j] = [Math.floor(x), Math.floor(y)]
    if (i !== column || j !== row) {
      const isNext = j === row && i === column + 1
      topLeft = isNext ? topRight : lattice(i, j, seed)
      bottomLeft = isNext ? bottomRight : lattice(i, j + 1, seed)
      topRight = lattice(i + 1, j, seed)
      bottomRight = lattice(i + 1, j + 1, seed)
      column = i
      row = j
    }
    const [fx, fy] = [x - i, y - j]
    const a = fx * fx * (3 - 2 * fx)
    const b = fy * fy * (3 - 2 * fy)
    const top = topLeft * (1 - a) + topRight * a
    const bottom = bottomLeft * (1 - a) + bottomRight * a
    return top * (1 - b) + bottom * b - 0.5
  }
}

/** A field of about unit deviation and mean 0, with features `size` long. */
export function valueNoise(size: number, seed: number, octaves = 3): (x: number, y: number) => number {
  const parts = Array.from({ length: octaves }, (_, k) => octave(seed + k))
  const power = parts.reduce((sum, _, k) => sum + 1 / 4 ** k, 0)
  // A blended lattice of uniform numbers has a deviation of about .2.
  const deviation = 0.2 * Math.sqrt(power)
  return (x, y) => {
    let sum = 0
    for (let k = 0; k < octaves; k++) sum += parts[k]((x / size) * 2 ** k, (y / size) * 2 ** k) / 2 ** k
    return sum / deviation
  }
}
