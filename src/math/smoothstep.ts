// The Hermite step of GLSL (GLSL ES 3.00, 8.3), so that both engines share one definition.

/** 0 below `from`, 1 above `to`, 3t² − 2t³ between; needs `from < to`. */
export function smoothstep(from: number, to: number, x: number): number {
  const t = Math.min(Math.max((x - from) / (to - from), 0), 1)
  return t * t * (3 - 2 * t)
}
