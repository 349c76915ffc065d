// Directions and points in the world (X right, Y up, Z away from the camera) as plain triples.

export type Vector = readonly [number, number, number]

export function dot(a: Vector, b: Vector): number {
  return a[0] * b[0] + a[1] * b[1] + a[2] * b[2]
}

export function cross(a: Vector, b: Vector): Vector {
  return [a[1] * b[2] - a[2] * b[1], a[2] * b[0] - a[0] * b[2], a[0] * b[1] - a[1] * b[0]]
}

/** The same direction with length 1; a zero vector stays zero. */
export function unitVector(a: Vector): Vector {
  const n = Math.hypot(a[0], a[1], a[2]) || 1
  return [a[0] / n, a[1] / n, a[2] / n]
}

/** `a` + `t` × `b`. */
export function along(a: Vector, b: Vector, t: number): Vector {
  return [a[0] + b[0] * t, a[1] + b[1] * t, a[2] + b[2] * t]
}
