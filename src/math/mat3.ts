// 3×3 matrices as nine numbers, row-major, acting on column vectors. Used once per step, never per pixel.

export type Mat3 = readonly number[]
export type Vec3 = readonly [number, number, number]

export const IDENTITY: Mat3 = [1, 0, 0, 0, 1, 0, 0, 0, 1]

/** The product `a · b`: apply `b` first, then `a`. */
export function multiply(a: Mat3, b: Mat3): number[] {
  const product: number[] = []
  for (let row = 0; row < 9; row += 3) {
    for (let column = 0; column < 3; column++) {
      product[row + column] = a[row] * b[column] + a[row + 1] * b[3 + column] + a[row + 2] * b[6 + column]
    }
  }
  return product
}

/** The product `m · v`. */
export function transform(m: Mat3, v: readonly number[]): [number, number, number] {
  return [
    m[0] * v[0] + m[1] * v[1] + m[2] * v[2],
    m[3] * v[0] + m[4] * v[1] + m[5] * v[2],
    m[6] * v[0] + m[7] * v[1] + m[8] * v[2],
  ]
}

export function determinant(m: Mat3): number {
  return m[0] * (m[4] * m[8] - m[5] * m[7]) - m[1] * (m[3] * m[8] - m[5] * m[6]) + m[2] * (m[3] * m[7] - m[4] * m[6])
}

/** The inverse of `m`. Throws a RangeError when the determinant is 0 or not finite. */
export function invert(m: Mat3): number[] {
  const scale = 1 / determinant(m)
  if (!Number.isFinite(scale)) throw new RangeError('This 3×3 matrix has no inverse: its determinant is 0.')
  return [
    (m[4] * m[8] - m[5] * m[7]) * scale,
    (m[2] * m[7] - m[1] * m[8]) * scale,
    (m[1] * m[5] - m[2] * m[4]) * scale,
    (m[5] * m[6] - m[3] * m[8]) * scale,
    (m[0] * m[8] - m[2] * m[6]) * scale,
    (m[2] * m[3] - m[0] * m[5]) * scale,
    (m[3] * m[7] - m[4] * m[6]) * scale,
    (m[1] * m[6] - m[0] * m[7]) * scale,
    (m[0] * m[4] - m[1] * m[3]) * scale,
  ]
}

/** The matrix with `d` on its diagonal and 0 elsewhere. */
export function diagonal(d: readonly number[]): number[] {
  return [d[0], 0, 0, 0, d[1], 0, 0, 0, d[2]]
}
