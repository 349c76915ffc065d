// Samples a map of colours on a cube over 0…1, red fastest: how transforms and chains become tables.

/** `size`³ entries, interleaved; `apply` changes three numbers in place. */
export function sampleCube(size: number, apply: (rgb: Float64Array) => void): Float32Array {
  const data = new Float32Array(size ** 3 * 3)
  const rgb = new Float64Array(3)
  for (let i = 0; i < size ** 3; i++) {
    rgb[0] = (i % size) / (size - 1)
    rgb[1] = (Math.floor(i / size) % size) / (size - 1)
    rgb[2] = Math.floor(i / size ** 2) / (size - 1)
    apply(rgb)
    data.set(rgb, i * 3)
  }
  return data
}
